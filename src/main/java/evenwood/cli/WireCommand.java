package evenwood.cli;

import evenwood.report.Sentences;
import evenwood.report.WireJson;
import evenwood.report.WirePlan;
import evenwood.report.WireSheet;
import evenwood.report.WireText;
import evenwood.rig.Connection;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.wiring.Alternatives;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.ChainReport;
import evenwood.wiring.Fit;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Computes how a rig is plugged in, and says what is wrong and what would be better. */
@Command(name = "wire", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Computes how a rig is plugged in: what fits, levels and noise at every joint, what would be better.")
final class WireCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 120;

    @Parameters(index = "0", arity = "0..1", paramLabel = "RIG", description = "A rig file with a part named wiring.")
    private String file;

    @Option(names = "--ask", description = "Asks what you have and how it is plugged in, then writes RIG.")
    private boolean ask;

    @Option(names = "--json", description = "Prints one JSON object instead of words.")
    private boolean json;

    @Option(names = "--sheet", paramLabel = "FILE", description = "Also writes the plan as a picture (.svg, .png) or page (.html, .pdf).")
    private String sheet;

    private final Terminal terminal;
    private final Presets presets = Presets.ofPlayer();

    WireCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (file == null) {
            throw new BadInput("wire: name a rig file, or one to be written with --ask; see evenwood wire --help");
        }
        if (sheet != null) {
            SheetFile.check("wire", sheet);
        }
        Path path = path(file);
        if (ask) {
            new WireAsking(terminal, presets).write(path);
        }
        WirePlan plan = plan(Rig.read(path, presets));
        if (json) {
            terminal.raw(WireJson.of(plan, Sentences.english()));
        } else {
            WireText.lines(plan, terminal.sentences(), TEXT_WIDTH).forEach(terminal::line);
        }
        if (sheet != null) {
            ResultFile.write("wire", sheet, sheet(plan));
        }
        return WiringRules.worst(plan.verdicts()).compareTo(Fit.WRONG) >= 0 ? ExitCode.STRONG_FINDING : ExitCode.DONE;
    }

    private WirePlan plan(Rig rig) {
        Connection connection = rig.connection().orElseThrow(() -> new BadInput("wire: " + file
            + " does not say how it is plugged in; add a part named wiring, or let evenwood wire --ask write a rig"));
        ChainReport report = ChainAnalysis.of(connection, rig.instrument().lowestHz());
        List<WiringVerdict> verdicts = WiringRules.verdicts(report);
        return new WirePlan(rig, report, verdicts, Alternatives.of(report, presets.shop()));
    }

    private byte[] sheet(WirePlan plan) {
        return switch (SheetFile.ending(sheet)) {
            case ".png" -> WireSheet.png(plan, terminal.sentences());
            case ".pdf" -> WireSheet.pdf(plan, terminal.sentences());
            case ".svg" -> WireSheet.svg(plan, terminal.sentences()).getBytes(StandardCharsets.UTF_8);
            default -> WireSheet.html(plan, terminal.sentences()).getBytes(StandardCharsets.UTF_8);
        };
    }

    private static Path path(String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException problem) {
            throw new BadInput("wire: " + name + " is no possible file name; check the spelling");
        }
    }
}
