package evenwood.cli;

import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.eq.Rendering;
import evenwood.live.Audition;
import evenwood.sound.SoundSource;
import evenwood.sound.Speaker;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Plays a take with the moves; Enter switches them off and on, both equally loud. */
@Command(name = "audition", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Plays a take with the moves. Enter switches between with and without, both equally loud; q and Enter ends.")
final class AuditionCommand implements Callable<Integer> {
    @Mixin
    private final TakeArgument take = new TakeArgument();

    @Mixin
    private final AdviceOptions advice = new AdviceOptions();

    @Mixin
    private final MovesOption moves = new MovesOption();

    @Option(names = "--output", paramLabel = "NAME", description = "Which output, by its name or a part of it (default: the system's first).")
    private String output;

    @Option(names = "--list", description = "Shows the outputs and ends.")
    private boolean list;

    private final Terminal terminal;
    private volatile boolean ended;

    AuditionCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (list) {
            Speaker.names().forEach(terminal::line);
            return ExitCode.DONE;
        }
        take.mustBeNamed("audition");
        advice.prepare(terminal, take.knownInstrument());
        EqChain change = moves.change(take, advice, terminal);
        Rendering levels = Rendering.matched(measured(EqChain.FLAT), measured(change));
        if (change.filters().isEmpty()) {
            terminal.line("There is nothing about the tone to move: both versions are the same.");
        }
        try (SoundSource source = take.open(); Speaker speaker = Speaker.open(output, source.format().sampleRateHz())) {
            Audition audition = new Audition(source, change, levels, speaker);
            terminal.line("Playing with the moves. Enter: without; q and Enter: end.");
            readKeys(audition);
            while (!ended && audition.playNext()) {
                // Waiting happens in the speaker.
            }
            if (!ended) {
                speaker.drain();
            }
        }
        return ExitCode.DONE;
    }

    private EqualisedTake measured(EqChain change) {
        try (SoundSource source = take.open()) {
            return EqualisedTake.measure(source, change);
        }
    }

    /** A thread of its own, because reading a key waits; it must not keep the program alive. */
    private void readKeys(Audition audition) {
        Thread keys = new Thread(() -> follow(audition), "keys");
        keys.setDaemon(true);
        keys.start();
    }

    private void follow(Audition audition) {
        try {
            BufferedReader reader = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
            for (String line = reader.readLine(); line != null && !ended; line = reader.readLine()) {
                if (line.strip().equalsIgnoreCase("q")) {
                    ended = true;
                } else {
                    audition.toggle();
                    terminal.line(audition.isMoved() ? "with the moves" : "without the moves");
                }
            }
        } catch (IOException noKeys) {
            terminal.note("audition: no keys can be read here; it plays with the moves to its end");
        }
    }
}
