package evenwood;

import evenwood.cli.EvenwoodCommand;
import evenwood.ui.Display;

/** The door of the program: the window when nothing is asked, a command otherwise; and how it ended. */
public final class Main {
    private Main() { }

    public static void main(String[] args) {
        if (args.length > 0) {
            System.exit(EvenwoodCommand.run(args));
        }
        if (Display.isThere() && Display.open()) {
            System.exit(0);
        }
        System.err.println("evenwood: there is no display for the window; checking the demo take here in the terminal");
        System.exit(EvenwoodCommand.run("check", "--demo"));
    }
}
