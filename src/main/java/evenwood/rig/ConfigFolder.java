package evenwood.rig;

import java.nio.file.Path;
import java.util.Locale;

/**
 * Where a player's own files live: what the system's convention says.
 *
 * <p>Source: XDG Base Directory Specification (Linux and others), the platform's application-data folders elsewhere (from
 * memory). {@code EVENWOOD_CONFIG} names another folder.
 */
public final class ConfigFolder {
    private ConfigFolder() { }

    public static Path path() {
        String chosen = System.getenv("EVENWOOD_CONFIG");
        if (chosen != null && !chosen.isBlank()) {
            return Path.of(chosen);
        }
        String system = System.getProperty("os.name", "").toLowerCase(Locale.ROOT);
        Path home = Path.of(System.getProperty("user.home", "."));
        if (system.contains("win")) {
            String appData = System.getenv("APPDATA");
            return (appData == null ? home : Path.of(appData)).resolve("Evenwood");
        }
        if (system.contains("mac")) {
            return home.resolve("Library/Application Support/Evenwood");
        }
        String xdg = System.getenv("XDG_CONFIG_HOME");
        return (xdg == null || xdg.isBlank() ? home.resolve(".config") : Path.of(xdg)).resolve("evenwood");
    }
}
