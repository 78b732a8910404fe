package evenwood.ui.model;

import java.io.IOException;
import java.io.Reader;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Properties;

/**
 * What the player chose last: language, theme, text size, source, rig. Kept in a small file between runs.
 *
 * <p>A file that cannot be read or written costs the memory only, never the window.
 */
public final class Choices {
    private final Path file;
    private final Properties kept = new Properties();

    public Choices(Path file) {
        this.file = file;
        if (Files.isRegularFile(file)) {
            try (Reader reader = Files.newBufferedReader(file)) {
                kept.load(reader);
            } catch (IOException | IllegalArgumentException unreadable) {
                kept.clear();
            }
        }
    }

    /** Where it lies; other things the window keeps lie beside it. */
    public Path folder() {
        return file.toAbsolutePath().getParent();
    }

    public String get(String name, String otherwise) {
        return kept.getProperty(name, otherwise);
    }

    public double number(String name, double otherwise) {
        try {
            return Double.parseDouble(kept.getProperty(name, ""));
        } catch (NumberFormatException none) {
            return otherwise;
        }
    }

    /** Keeps it at once, so that it outlives a crash. */
    public void put(String name, Object value) {
        kept.setProperty(name, String.valueOf(value));
        try {
            Files.createDirectories(folder());
            try (Writer writer = Files.newBufferedWriter(file)) {
                kept.store(writer, null);
            }
        } catch (IOException unwritable) {
            // It is remembered until the window closes; nothing else depends on it.
        }
    }
}
