package evenwood.ui.screen;

import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** The keys that do the same on every page (docs/window.md). */
final class Shortcuts {
    private final Shell shell;

    Shortcuts(Shell shell) {
        this.shell = shell;
    }

    void press(KeyEvent event) {
        if (does(event)) {
            event.consume();
        }
    }

    private boolean does(KeyEvent event) {
        if (event.getCode() == KeyCode.F11 || event.getCode() == KeyCode.F2) {
            shell.toggleStand();
            return true;
        }
        if (event.getCode() == KeyCode.ESCAPE && shell.isStanding()) {
            shell.leaveStand();
            return true;
        }
        return event.isShortcutDown() && !event.isAltDown() && doesWithControl(event);
    }

    private boolean doesWithControl(KeyEvent event) {
        int digit = event.getCode().isDigitKey() ? event.getCode().getName().replace("Numpad ", "").charAt(0) - '1' : -1;
        if (digit >= 0) {
            shell.openAt(digit);
            return true;
        }
        switch (event.getCode()) {
            case PLUS, EQUALS, ADD -> shell.scale(1);
            case MINUS, SUBTRACT -> shell.scale(-1);
            case D -> shell.turnTheme();
            default -> {
                return false;
            }
        }
        return true;
    }
}
