package evenwood.cli;

import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Command;

/** The word {@code evenwood} and everything that may follow it. */
@Command(name = "evenwood", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Listens to your instrument through its pickup and says what to turn.",
    footer = {"", "Exit codes: 0 done; 1 the take has a strong finding; 2 bad input or usage, also a file that is cut short or damaged",
        "(what could be read is measured); 3 a device or disk failed midway (what was measured is kept)."})
public final class EvenwoodCommand implements Runnable {
    private static final List<Subcommand> SUBCOMMANDS = List.of(new Subcommand("check", CheckCommand::new), new Subcommand("listen", ListenCommand::new),
        new Subcommand("guide", GuideCommand::new), new Subcommand("render", RenderCommand::new), new Subcommand("audition", AuditionCommand::new),
        new Subcommand("learn", LearnCommand::new), new Subcommand("presets", PresetsCommand::new), new Subcommand("wire", WireCommand::new),
        new Subcommand("journal", JournalCommand::of), new Subcommand("hunt", HuntCommand::new));

    private record Subcommand(String name, Function<Terminal, Object> make) { }

    private EvenwoodCommand() { }

    /** Runs one command and returns its exit code. */
    public static int run(String... args) {
        return run(Terminal.ofSystem(), args);
    }

    /** The same with its results going elsewhere, as plain lines in UTF-8. */
    public static int run(OutputStream results, String... args) {
        return run(new Terminal(results, System.err, false, StandardCharsets.UTF_8), args);
    }

    static int run(Terminal terminal, String... args) {
        Failures failures = new Failures(terminal);
        CommandLine line = new CommandLine(new EvenwoodCommand());
        needed(args).forEach(each -> line.addSubcommand(each.make.apply(terminal)));
        line.setOut(terminal.helpWriter())
            .setParameterExceptionHandler(failures)
            .setExecutionExceptionHandler(failures)
            .setColorScheme(CommandLine.Help.defaultColorScheme(terminal.isInteractive() ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
        return terminal.ended(line.execute(args));
    }

    /** Reading the options of a command takes a twentieth of a second: only the one that is asked for, unless a help or a near match wants all. */
    private static List<Subcommand> needed(String... args) {
        String first = args.length == 0 ? "" : args[0];
        if (first.equals("--version") || first.equals("-V")) {
            return List.of();
        }
        List<Subcommand> named = SUBCOMMANDS.stream().filter(each -> each.name.equals(first)).toList();
        return named.isEmpty() ? SUBCOMMANDS : named;
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
