package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.Prediction;
import evenwood.coach.StoredMove;
import evenwood.eq.EqChain;
import evenwood.live.WholeTake;
import evenwood.report.MovesFile;
import evenwood.sound.SoundSource;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Option;

/** Which moves a command is about: those the coach would make, or those in a file. */
final class MovesOption {
    private static final String AUTO = "auto";

    @Option(names = "--moves", paramLabel = "auto|FILE", defaultValue = AUTO,
        description = {"The coach's own (auto, the default), or a file: what check --json prints, or its array \"moves\".",
            "With --rig, moves of its controls do what was learned of them."})
    private String moves;

    /** What the moves do to the sound. */
    EqChain change(TakeArgument take, AdviceOptions advice, Terminal terminal) {
        if (moves.equals(AUTO)) {
            return ofCoach(take, advice, terminal);
        }
        List<StoredMove> written = MovesFile.read(Path.of(moves));
        return advice.rig().map(rig -> StoredMove.chain(written, rig, sampleRateHz(take))).orElseGet(() -> StoredMove.chain(written));
    }

    private static double sampleRateHz(TakeArgument take) {
        try (SoundSource source = take.open()) {
            return source.format().sampleRateHz();
        }
    }

    private static EqChain ofCoach(TakeArgument take, AdviceOptions advice, Terminal terminal) {
        try (SoundSource source = take.open(); ProgressBar progress = new ProgressBar(terminal)) {
            Assessment assessment = advice.assess(WholeTake.measure(source, progress::show).readings(), take::open);
            return assessment.predicted().map(Prediction::change).orElse(EqChain.FLAT);
        }
    }
}
