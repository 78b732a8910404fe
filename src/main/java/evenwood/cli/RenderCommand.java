package evenwood.cli;

import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.eq.Rendering;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import evenwood.sound.WavWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Writes a take as it would sound after the moves. */
@Command(name = "render", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Writes a take as it would sound after the moves.")
final class RenderCommand implements Callable<Integer> {
    private static final double WORTH_SAYING_DB = 0.05;

    @Mixin
    private final TakeArgument take = new TakeArgument();

    @Mixin
    private final AdviceOptions advice = new AdviceOptions();

    @Mixin
    private final MovesOption moves = new MovesOption();

    @Option(names = {"-o", "--output"}, paramLabel = "OUT.wav", required = true, description = "The file to write: mono, 24 bits.")
    private Path out;

    @Option(names = "--match", description = "Equally loud as the take, which is written beside it as OUT-before.wav.")
    private boolean match;

    private final Terminal terminal;
    private Optional<SoundProblem> damage = Optional.empty();

    RenderCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        take.mustBeNamed("render");
        advice.prepare(terminal, take.knownInstrument());
        EqChain change = moves.change(take, advice, terminal);
        EqualisedTake after = measured(change);
        Rendering rendering = match ? Rendering.matched(measured(EqChain.FLAT), after) : Rendering.asMoved(after);
        write(change, rendering.afterDb(), out);
        if (match) {
            write(EqChain.FLAT, rendering.beforeDb(), beside(out));
            terminal.line(String.format(Locale.ROOT, "Loudness: the moved take was brought to the other's by %+.1f dB.", rendering.afterDb() - rendering.beforeDb()));
        }
        if (change.equals(EqChain.FLAT)) {
            terminal.line("There is nothing to move: the take is written as it is.");
        }
        if (rendering.turnedDownDb() > WORTH_SAYING_DB) {
            terminal.line(String.format(Locale.ROOT, "Turned down by %.1f dB so that no peak passes %.0f dBTP.",
                rendering.turnedDownDb(), Rendering.CEILING_DBTP));
        }
        damage.map(SoundProblem::getMessage).ifPresent(terminal::note);
        return damage.map(ExitCode::of).orElse(ExitCode.DONE);
    }

    private EqualisedTake measured(EqChain change) {
        try (SoundSource source = take.open()) {
            return EqualisedTake.measure(source, change);
        }
    }

    private void write(EqChain change, double gainDb, Path file) {
        try (SoundSource source = take.open()) {
            refuseOwnFile(source, file);
            try (WavWriter writer = WavWriter.createDithered(file, source.format().sampleRateHz(), WavWriter.Coding.INTEGER_24)) {
                Rendering.write(source, change, gainDb, writer);
            } catch (SoundProblem problem) {
                if (!problem.isDamage()) {
                    throw problem;
                }
                damage = Optional.of(problem); // What could be read of it is written.
            }
        }
        terminal.line("Written: " + file);
    }

    /** Writing over the take while it is read would destroy it. */
    private static void refuseOwnFile(SoundSource source, Path file) {
        try {
            if (Files.exists(file) && Files.exists(Path.of(source.name())) && Files.isSameFile(file, Path.of(source.name()))) {
                throw SoundProblem.atStart("render: " + file + " is the take itself; choose another name for the output");
            }
        } catch (java.io.IOException | java.nio.file.InvalidPathException unknown) {
            // The source is no file, or its file is gone: nothing that could be overwritten.
        }
    }

    private static Path beside(Path file) {
        String name = file.getFileName().toString();
        int dot = name.toLowerCase(Locale.ROOT).endsWith(".wav") ? name.length() - 4 : name.length();
        return file.resolveSibling(name.substring(0, dot) + "-before" + name.substring(dot));
    }
}
