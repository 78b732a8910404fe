package evenwood.journal;

import java.nio.file.Path;
import java.util.Locale;

/**
 * Where the journal lies when nobody names another file: among the player's data, by the system's convention.
 *
 * <p>Source: XDG Base Directory Specification ({@code XDG_DATA_HOME}, else {@code ~/.local/share}); the platform's
 * application-data folders elsewhere (from memory). {@code EVENWOOD_JOURNAL} names another file.
 */
public final class JournalFile {
    private static final String NAME = "journal.db";

    private JournalFile() { }

    public static Path usual() {
        return usual(System.getProperty("os.name", ""), Path.of(System.getProperty("user.home", ".")), System.getenv("EVENWOOD_JOURNAL"),
            System.getenv("XDG_DATA_HOME"), System.getenv("LOCALAPPDATA"));
    }

    static Path usual(String systemName, Path home, String chosen, String xdgDataHome, String localAppData) {
        if (isSaid(chosen)) {
            return Path.of(chosen);
        }
        String system = systemName.toLowerCase(Locale.ROOT);
        if (system.contains("mac")) {
            return home.resolve("Library/Application Support/Evenwood").resolve(NAME);
        }
        if (system.contains("win")) {
            return (isSaid(localAppData) ? Path.of(localAppData) : home).resolve("Evenwood").resolve(NAME);
        }
        // The specification: relative paths in the variable are invalid and to be ignored.
        Path data = isSaid(xdgDataHome) && Path.of(xdgDataHome).isAbsolute() ? Path.of(xdgDataHome) : home.resolve(".local/share");
        return data.resolve("evenwood").resolve(NAME);
    }

    private static boolean isSaid(String value) {
        return value != null && !value.isBlank();
    }
}
