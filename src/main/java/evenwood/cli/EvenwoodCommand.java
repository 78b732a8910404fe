package evenwood.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The word {@code evenwood} and everything that may follow it. */
@Command(name = "evenwood", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Listens to your instrument through its pickup and says what to turn.",
    footer = {"", "Exit codes: 0 done; 1 the take has a strong finding; 2 bad input or usage;",
        "3 a device or file failed midway (what was measured is kept)."})
public final class EvenwoodCommand implements Runnable {
    private EvenwoodCommand() { }

    /** Runs one command and returns its exit code. */
    public static int run(String... args) {
        return run(Terminal.ofSystem(), args);
    }

    static int run(Terminal terminal, String... args) {
        Failures failures = new Failures(terminal);
        CommandLine line = new CommandLine(new EvenwoodCommand())
            .addSubcommand(new CheckCommand(terminal))
            .addSubcommand(new ListenCommand(terminal))
            .addSubcommand(new GuideCommand(terminal))
            .addSubcommand(new RenderCommand(terminal))
            .addSubcommand(new AuditionCommand(terminal))
            .addSubcommand(new LearnCommand(terminal))
            .addSubcommand(new PresetsCommand(terminal))
            .addSubcommand(new WireCommand(terminal))
            .addSubcommand(new JournalCommand(terminal))
            .addSubcommand(new HuntCommand(terminal))
            .setOut(terminal.helpWriter())
            .setParameterExceptionHandler(failures)
            .setExecutionExceptionHandler(failures)
            .setColorScheme(CommandLine.Help.defaultColorScheme(terminal.isInteractive() ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
        return line.execute(args);
    }

    @Override
    public void run() {
        throw new BadInput("evenwood: say what to do: check, listen, guide, render, audition, learn, wire, hunt, journal or presets; see evenwood --help");
    }

    static final class Version implements CommandLine.IVersionProvider {
        @Override
        public String[] getVersion() {
            String version = EvenwoodCommand.class.getPackage().getImplementationVersion();
            return new String[] {"evenwood " + (version == null ? "(not packaged)" : version)};
        }
    }
}
