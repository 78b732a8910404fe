package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.Severity;
import evenwood.judge.Statement;
import evenwood.judge.Verdict;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Answers what was heard of the wiring: plug it in otherwise before turning anything. Only when it is likely enough to get up for. */
final class WiringCoach {
    private WiringCoach() { }

    static List<Move> moves(Verdict verdict) {
        return verdict.findings().stream().filter(finding -> finding.fault() == Fault.LOADED_PICKUP && finding.severity() != Severity.SLIGHT)
            .map(finding -> new Move(1, Move.Control.plain("control.wiring"), Move.Kind.WIRING, OptionalDouble.empty(), OptionalDouble.empty(),
                OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.empty(), Optional.empty(), Optional.empty(),
                Statement.of("loaded-pickup.cure"), Fault.LOADED_PICKUP)).toList();
    }
}
