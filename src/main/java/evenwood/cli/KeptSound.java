package evenwood.cli;

import evenwood.journal.Journal;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/** The sound of a take on its way into the journal and out of it, as the FLAC file it is. */
final class KeptSound {
    /** RFC 9639, section 6. */
    private static final byte[] FLAC = "fLaC".getBytes(StandardCharsets.US_ASCII);
    /** A take of an hour is well under it; the store takes no single value above 1 GB. */
    private static final long MOST_BYTES = 500_000_000;

    private KeptSound() { }

    /** @throws BadInput when it is no FLAC file, or too long a one */
    static byte[] read(String file) {
        Path path = JournalPlace.path("check", file);
        try {
            if (!Files.isRegularFile(path) || Files.size(path) > MOST_BYTES) {
                throw new BadInput("check --keep-sound: " + file + ", but a FLAC file of at most 500 MB is needed; the take alone is kept with --keep");
            }
            byte[] bytes = Files.readAllBytes(path);
            if (bytes.length < FLAC.length || !Arrays.equals(bytes, 0, FLAC.length, FLAC, 0, FLAC.length)) {
                throw new BadInput("check --keep-sound: " + file + " is no FLAC file; make one of it (flac FILE) and check that, or keep the take alone with --keep");
            }
            return bytes;
        } catch (IOException problem) {
            throw new BadInput("check --keep-sound: " + file + " cannot be read (" + problem.getMessage() + "); check the file and its rights");
        }
    }

    static void write(Journal journal, long id, String file) {
        byte[] sound = journal.flac(id).orElseThrow(() -> new BadInput("journal show: no sound was kept with take " + id + "; next time: evenwood check TAKE.flac --keep-sound"));
        ResultFile.write("journal show", file, sound);
    }
}
