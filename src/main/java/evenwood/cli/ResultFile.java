package evenwood.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystemException;
import java.nio.file.Files;

/** Writes a result into a file that the player named. */
final class ResultFile {
    private ResultFile() { }

    /**
     * Writes it whole, in place of a file of that name.
     *
     * @throws BadInput  when there can be no such file
     * @throws BrokenOff when the disk takes not all of it
     */
    static void write(String command, String file, byte[] content) {
        try {
            Files.write(JournalPlace.path(command, file), content);
        } catch (FileSystemException refused) {
            throw new BadInput(command + ": " + file + " cannot be written (" + refused.getMessage() + "); choose another folder");
        } catch (IOException full) {
            throw new BrokenOff(command + ": " + file + " cannot be written to its end (" + full.getMessage() + "); make room there, or choose another disk", full);
        }
    }

    static void write(String command, String file, String content) {
        write(command, file, content.getBytes(StandardCharsets.UTF_8));
    }
}
