package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.Prediction;
import evenwood.coach.StoredMove;
import evenwood.eq.EqChain;
import evenwood.live.WholeTake;
import evenwood.report.MovesFile;
import evenwood.sound.SoundSource;
import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Which moves a command is about: those the coach would make, or those in a file. */
final class MovesOption {
    private static final String AUTO = "auto";

    @Option(names = "--moves", paramLabel = "auto|FILE", defaultValue = AUTO,
        description = "The coach's own (auto, the default), or a file: what check --json prints, or its array \"moves\".")
    private String moves;

    /** What the moves do to the sound. */
    EqChain change(TakeArgument take, AdviceOptions advice, Terminal terminal) {
        return moves.equals(AUTO) ? ofCoach(take, advice, terminal) : StoredMove.chain(MovesFile.read(Path.of(moves)));
    }

    private static EqChain ofCoach(TakeArgument take, AdviceOptions advice, Terminal terminal) {
        try (SoundSource source = take.open(); ProgressBar progress = new ProgressBar(terminal)) {
            Assessment assessment = advice.assess(WholeTake.measure(source, progress::show).readings(), take::open);
            return assessment.predicted().map(Prediction::change).orElse(EqChain.FLAT);
        }
    }
}
