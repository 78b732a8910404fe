package evenwood.wiring;

import evenwood.rig.SignalKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether power amplifiers and loudspeakers meet each other and nobody else.
 *
 * <p>Source: reference §7.4: never a loudspeaker output into a DI without a rated pad and the load the amplifier needs; the
 * rest is common practice.
 */
final class SpeakerRule {
    private static final double LEAST_RATED_PAD_DB = 40;

    private SpeakerRule() { }

    static List<WiringVerdict> verdicts(JointReport report, ChainReport chain) {
        Joint joint = report.joint();
        boolean gives = joint.from().output() == SignalKind.SPEAKER;
        boolean takes = joint.to().accepts() == SignalKind.SPEAKER;
        List<WiringVerdict> verdicts = new ArrayList<>();
        if (takes && !gives) {
            verdicts.add(WiringVerdict.of(WiringFault.NO_POWER_AMP, Fit.WRONG, joint, joint.to().name()));
        }
        if (!gives || !(joint.from() instanceof Device.Between amp)) {
            return verdicts;
        }
        if (takes && joint.to() instanceof Device.End cabinet && cabinet.input().inputOhms() < amp.box().leastLoadOhms()) {
            verdicts.add(WiringVerdict.of(WiringFault.SPEAKER_LOAD_LOW, Fit.DANGER, joint, cabinet.input().inputOhms(), amp.box().leastLoadOhms()));
        }
        if (!takes && !isRatedFor(joint.to())) {
            verdicts.add(WiringVerdict.of(WiringFault.SPEAKER_INTO_INPUT, Fit.DANGER, joint, Dbu.toVolts(report.peakDbu()), joint.to().name()));
        }
        if (!takes && !hasLoudspeaker(amp, chain)) {
            verdicts.add(WiringVerdict.of(WiringFault.AMP_WITHOUT_LOAD, amp.box().needsLoad() ? Fit.DANGER : Fit.TOLERABLE, joint, amp.name()));
        }
        return verdicts;
    }

    private static boolean isRatedFor(Device.Taking to) {
        return to instanceof Device.Between between && between.box().speakerRated() && between.plugged().padDb() >= LEAST_RATED_PAD_DB;
    }

    private static boolean hasLoudspeaker(Device.Between amp, ChainReport chain) {
        return chain.joints().stream().map(JointReport::joint)
            .anyMatch(joint -> joint.from().equals(amp) && joint.to().accepts() == SignalKind.SPEAKER);
    }
}
