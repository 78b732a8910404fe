package evenwood;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;

/**
 * What a test needs from the machine. Where it is missing the test says so and is skipped; with
 * {@code -Devenwood.require=all}, as continuous integration sets it, it fails instead.
 */
public final class Needs {
    private Needs() { }

    public static void program(String name) {
        require(onPath(name), "needs the program " + name);
    }

    public static void file(String path) {
        require(Files.exists(Path.of(path)), "needs the file " + path);
    }

    public static void require(boolean there, String missing) {
        if ("all".equals(System.getProperty("evenwood.require"))) {
            if (!there) {
                throw new AssertionError(missing + ", and this run allows no skipping");
            }
            return;
        }
        assumeTrue(there, missing + "; skipped");
    }

    private static boolean onPath(String name) {
        return Arrays.stream(System.getenv("PATH").split(File.pathSeparator)).anyMatch(dir -> new File(dir, name).canExecute());
    }
}
