package evenwood.wiring;

import java.util.ArrayList;
import java.util.List;

/** Hears all rules about a computed chain and puts what they found in order. */
public final class WiringRules {
    private WiringRules() { }

    public static List<WiringVerdict> verdicts(ChainReport report) {
        List<WiringVerdict> verdicts = new ArrayList<>();
        for (WayReport way : report.ways()) {
            for (JointReport joint : way.joints()) {
                verdicts.addAll(ImpedanceRule.verdicts(joint, report));
                verdicts.addAll(CableRule.verdicts(joint));
                verdicts.addAll(SpeakerRule.verdicts(joint, report));
            }
            verdicts.addAll(LevelRule.verdicts(way));
            verdicts.addAll(GainRule.verdicts(way));
            verdicts.addAll(PhantomRule.verdicts(way));
        }
        verdicts.addAll(GroundRule.verdicts(report));
        verdicts.sort(WiringVerdict.WORST_FIRST);
        return List.copyOf(verdicts);
    }

    public static Fit worst(List<WiringVerdict> verdicts) {
        return verdicts.stream().map(WiringVerdict::fit).max(java.util.Comparator.naturalOrder()).orElse(Fit.RIGHT);
    }

    public static Fit worstAt(List<WiringVerdict> verdicts, Joint joint) {
        return worst(verdicts.stream().filter(verdict -> verdict.joint() == joint.number()).toList());
    }
}
