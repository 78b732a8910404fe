package evenwood.measure;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** Keeps the figures a test measured under {@code target/accuracy}, from where {@code docs/accuracy.md} takes them. */
final class AccuracyTable {
    private AccuracyTable() { }

    static void write(String name, CharSequence table) {
        try {
            Path out = Path.of("target", "accuracy", name + ".md");
            Files.createDirectories(out.getParent());
            Files.writeString(out, table);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
