package evenwood.takes;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;

/** Runs a program to its end and says what it said when it fails. */
final class Programs {
    private Programs() { }

    static void run(String what, Path input, String... command) throws IOException {
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        if (input != null) {
            builder.redirectInput(input.toFile());
        }
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        try {
            if (process.waitFor() != 0) {
                throw new IllegalStateException(what + ": exit " + process.exitValue() + ": " + said);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(what + ": interrupted", e);
        }
    }
}
