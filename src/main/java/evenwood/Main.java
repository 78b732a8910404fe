package evenwood;

import evenwood.cli.EvenwoodCommand;

/** The door of the program: picks the command and says how it ended. */
public final class Main {
    private Main() { }

    public static void main(String[] args) {
        if (args.length == 0) {
            System.err.println("evenwood: there is no window yet; checking the demo take here in the terminal");
            System.exit(EvenwoodCommand.run("check", "--demo"));
        }
        System.exit(EvenwoodCommand.run(args));
    }
}
