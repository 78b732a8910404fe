package evenwood.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
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
        ByteArrayOutputStream err = new ByteArrayOutputStream();
        Terminal terminal = new Terminal(new PrintStream(out, true, StandardCharsets.UTF_8),
            new PrintStream(err, true, StandardCharsets.UTF_8), false, StandardCharsets.UTF_8,
            new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
        int code = EvenwoodCommand.run(terminal, args);
        return new Spoken(code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    }
}
