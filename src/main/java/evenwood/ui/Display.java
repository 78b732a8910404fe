package evenwood.ui;

import evenwood.ui.screen.EvenwoodWindow;
import java.util.Locale;
import java.util.Map;

/** Whether a window can be opened here, asked without touching the screen library, and the opening itself. */
public final class Display {
    private Display() { }

    /** On Linux and other Unixes a display must be named in the environment; other systems always have one. */
    public static boolean isThere() {
        return isThere(System.getProperty("os.name", ""), System.getenv());
    }

    static boolean isThere(String system, Map<String, String> environment) {
        String name = system.toLowerCase(Locale.ROOT);
        if (name.contains("win") || name.contains("mac")) {
            return true;
        }
        return !environment.getOrDefault("DISPLAY", "").isBlank() || !environment.getOrDefault("WAYLAND_DISPLAY", "").isBlank();
    }

    /** Opens the window and returns when it is closed. @return false when this machine cannot show it after all */
    public static boolean open() {
        return EvenwoodWindow.open();
    }
}
