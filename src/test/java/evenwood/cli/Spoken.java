package evenwood.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/** One command run in this process, and everything it said. */
record Spoken(int exitCode, String out, String err) {
    static Spoken by(String... args) {
        return answering("", args);
    }

    /** With what a player types. */
    static Spoken answering(String typed, String... args) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        Spoken spoken = into(out, typed, args);
        return new Spoken(spoken.exitCode(), out.toString(StandardCharsets.UTF_8), spoken.err());
    }

    /** With its results going where they may not be taken; {@code out} of what comes back is empty. */
    static Spoken into(OutputStream out, String typed, String... args) {
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(out, new PrintStream(err, true, StandardCharsets.UTF_8), false, StandardCharsets.UTF_8,
            new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
        int code = EvenwoodCommand.run(terminal, args);
        return new Spoken(code, "", err.toString(StandardCharsets.UTF_8));
    }
}
