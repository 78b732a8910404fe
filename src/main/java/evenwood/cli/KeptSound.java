package evenwood.cli;

import evenwood.journal.Journal;
import evenwood.sound.FlacCopy;
import evenwood.sound.SoundProblem;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;

/** The sound of a take on its way into the journal and out of it, as FLAC: a FLAC file as it is, any other made into one. */
final class KeptSound {
    /** RFC 9639, section 6. */
    private static final byte[] FLAC = "fLaC".getBytes(StandardCharsets.US_ASCII);
    /** A take of an hour is well under it; the store takes no single value above 1 GB. */
    private static final long MOST_BYTES = 500_000_000;
    private static final String WITHOUT = "; the take is kept without it";

    private KeptSound() { }

    /** Empty when it cannot be kept; then it has said why. */
    static Optional<byte[]> of(String take, Terminal terminal) {
        Path path = JournalPlace.path("check", take);
        try {
            return isFlac(path) ? read(path, take, terminal) : copied(path, take, terminal);
        } catch (IOException problem) {
            terminal.note("check --keep-sound: " + take + " cannot be copied (" + problem.getMessage() + ")" + WITHOUT);
        } catch (SoundProblem problem) {
            terminal.note(problem.getMessage() + WITHOUT);
        }
        return Optional.empty();
    }

    private static boolean isFlac(Path path) throws IOException {
        try (var start = Files.newInputStream(path)) {
            return Arrays.equals(start.readNBytes(FLAC.length), FLAC);
        }
    }

    private static Optional<byte[]> copied(Path path, String take, Terminal terminal) throws IOException {
        Path copy = Files.createTempFile("evenwood-sound", ".flac");
        try {
            FlacCopy made = FlacCopy.write(path, copy);
            if (made.roundedSamples() > 0) {
                terminal.note("The sound is kept in " + made.bitsPerSample() + " bits: " + made.roundedSamples() + " samples were rounded to that"
                    + (made.heldSamples() > 0 ? ", " + made.heldSamples() + " beyond full scale were held at it" : ""));
            }
            return read(copy, take, terminal);
        } finally {
            Files.deleteIfExists(copy);
        }
    }

    private static Optional<byte[]> read(Path flac, String take, Terminal terminal) throws IOException {
        if (Files.size(flac) > MOST_BYTES) {
            terminal.note("check --keep-sound: the sound of " + take + " is " + Files.size(flac) / 1_000_000 + " MB as FLAC, but at most 500 MB find room" + WITHOUT);
            return Optional.empty();
        }
        return Optional.of(Files.readAllBytes(flac));
    }

    static void write(Journal journal, long id, String file) {
        byte[] sound = journal.flac(id).orElseThrow(() -> new BadInput("journal show: no sound was kept with take " + id + "; next time: evenwood check TAKE --keep-sound"));
        ResultFile.write("journal show", file, sound);
    }
}
