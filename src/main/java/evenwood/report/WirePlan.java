package evenwood.report;

import evenwood.rig.Rig;
import evenwood.wiring.ChainReport;
import evenwood.wiring.WiringAdvice;
import evenwood.wiring.WiringVerdict;
import java.util.List;

/**
 * All that is known and said about how a rig is plugged in.
 *
 * @param rig      whose
 * @param report   computed
 * @param verdicts what is wrong, worst first
 * @param advice   what would be better
 */
public record WirePlan(Rig rig, ChainReport report, List<WiringVerdict> verdicts, WiringAdvice advice) {
    public WirePlan {
        verdicts = List.copyOf(verdicts);
    }

    List<WiringVerdict> at(int joint) {
        return verdicts.stream().filter(verdict -> verdict.joint() == joint).toList();
    }
}
