package evenwood.cli;

import evenwood.report.PresetsJson;
import evenwood.rig.PresetKind;
import evenwood.rig.PresetText;
import evenwood.rig.Presets;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Shows what instruments and gear are known. */
@Command(name = "presets", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Shows what instruments and gear are known.", synopsisSubcommandLabel = "(list | show | verify)")
final class PresetsCommand implements Runnable {
    private final Terminal terminal;
    private final Presets presets = Presets.ofPlayer();

    PresetsCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public void run() {
        throw new BadInput("presets: say list, show or verify; see evenwood presets --help");
    }

    @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists the ids by kind.")
    int list(@Option(names = "--json", description = "Prints one JSON object instead of words.") boolean json) {
        Map<PresetKind, List<String>> ids = new EnumMap<>(PresetKind.class);
        for (PresetKind kind : PresetKind.values()) {
            ids.put(kind, presets.ids(kind));
        }
        if (json) {
            terminal.raw(PresetsJson.of(ids));
        } else {
            ids.forEach((kind, names) -> {
                terminal.line(kind.folder());
                names.forEach(name -> terminal.line("  " + name));
            });
        }
        return ExitCode.DONE;
    }

    @Command(name = "show", mixinStandardHelpOptions = true, description = "Shows one preset: the file as it is used.")
    int show(@Parameters(paramLabel = "ID", description = "An id from presets list.") String id,
             @Option(names = "--json", description = "Prints one JSON object instead of the file.") boolean json) {
        PresetKind kind = presets.kindOf(id);
        PresetText text = presets.text(kind, id);
        if (json) {
            terminal.raw(PresetsJson.of(kind, text));
        } else {
            terminal.line("# " + text.file());
            terminal.line("# To have it otherwise, put your own file here: " + presets.ownFile(kind, id));
            text.yaml().lines().forEach(terminal::line);
        }
        return ExitCode.DONE;
    }

    @Command(name = "verify", mixinStandardHelpOptions = true, description = "Reads every preset, your own too, and names the first mistake.")
    int verify() {
        presets.verify();
        terminal.line("All presets are in order.");
        return ExitCode.DONE;
    }
}
