package evenwood.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a small text file whole or not at all: a file that was there before stays until the new one is complete. */
final class WholeFile {
    private WholeFile() { }

    /** @throws PresetProblem when it cannot be written */
    static void write(Path file, String text) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
            Path fresh = file.resolveSibling(file.getFileName() + ".new");
            Files.writeString(fresh, text);
            Files.move(fresh, file, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException problem) {
            throw new PresetProblem("learn: " + file + " cannot be written (" + problem.getMessage() + "); check the folder and its rights");
        }
    }
}
