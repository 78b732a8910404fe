package evenwood.coach;

import evenwood.judge.Statement;
import evenwood.judge.Verdict;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * All that is known and said about one take.
 *
 * @param readings what was measured
 * @param verdict  what is wrong, and what could not be judged
 * @param moves    what to turn, in this order
 * @param predicted what the take would be afterwards; empty without moves
 * @param comparison whether it is better than the take before, if that is known
 */
public record Assessment(TakeReadings readings, Verdict verdict, List<Move> moves, Optional<Prediction> predicted,
                         Optional<Comparison> comparison) {
    public Assessment {
        moves = List.copyOf(moves);
    }

    /** The same with more that could not be judged, such as what only the file knows. */
    public Assessment withMissing(List<Statement> more) {
        List<Statement> all = new ArrayList<>(verdict.missing());
        all.addAll(more);
        return new Assessment(readings, new Verdict(verdict.findings(), all, verdict.tone(), verdict.wiring()), moves, predicted, comparison);
    }

    /** The same, with how the rig answered beside the comparison with the take before. */
    public Assessment withAnswers(List<RigAnswer> answers) {
        return new Assessment(readings, verdict, moves, predicted, comparison.map(each -> each.with(answers)));
    }

    Assessment with(Comparison newComparison) {
        return new Assessment(readings, verdict, moves, predicted, Optional.of(newComparison));
    }
}
