package evenwood.wiring;

import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.Pickup;
import evenwood.rig.SignalKind;
import java.util.List;

/**
 * Whether the cable is the right kind and not too long.
 *
 * <p>Source: reference §7.2 (lengths, common practice) and §7.7 (speaker and instrument cable). A loudspeaker needs conductors
 * with enough cross-section, and insulation for what an amplifier gives; that an instrument cable has a screen is not what
 * harms. A pickup needs the screen.
 */
final class CableRule {
    /** Unbalanced line level, common practice. */
    private static final double LONGEST_UNBALANCED_METRES = 10;
    private static final double FAR_TOO_LONG = 2;
    private static final double TREBLE_HEARD_DB = 1;
    private static final double TREBLE_LOST_DB = 3;
    private static final double LEVEL_HEARD_DB = 3;
    private static final double LEVEL_LOST_DB = 9;
    /** Part of a loudspeaker's impedance that its cable may have; common practice. */
    private static final double SPEAKER_CABLE_PART = 0.05;
    private static final double SHORT_METRES = 3;

    private CableRule() { }

    static List<WiringVerdict> verdicts(JointReport report) {
        Joint joint = report.joint();
        if (joint.cable().isEmpty()) {
            return List.of();
        }
        CableRun run = joint.cable().get();
        boolean speaker = joint.from().output() == SignalKind.SPEAKER;
        if (speaker) {
            return run.cable().made() == Cable.Made.SPEAKER ? speakerLength(report, run)
                : List.of(WiringVerdict.of(WiringFault.SIGNAL_CABLE_ON_SPEAKER, Fit.DANGER, joint, run.cable().squareMillimetres(),
                    run.cable().ohmsPerMetre() * run.metres()));
        }
        if (!run.cable().shielded()) {
            return List.of(WiringVerdict.of(WiringFault.SPEAKER_CABLE_ON_SIGNAL, Fit.WRONG, joint, run.metres()));
        }
        if (joint.from().outputBalanced() && joint.to().inputBalanced() && !run.cable().balanced()) {
            return List.of(WiringVerdict.of(WiringFault.CABLE_UNBALANCED, run.metres() > FAR_TOO_LONG * LONGEST_UNBALANCED_METRES ? Fit.WRONG
                : Fit.TOLERABLE, joint, run.metres()));
        }
        return length(report, run);
    }

    private static List<WiringVerdict> speakerLength(JointReport report, CableRun run) {
        double part = run.cable().ohmsPerMetre() * run.metres() / report.loadOhms();
        if (part <= SPEAKER_CABLE_PART) {
            return List.of();
        }
        return List.of(tooLong(part > FAR_TOO_LONG * SPEAKER_CABLE_PART ? Fit.WRONG : Fit.TOLERABLE, report, run,
            SPEAKER_CABLE_PART * report.loadOhms() / run.cable().ohmsPerMetre()));
    }

    private static List<WiringVerdict> length(JointReport report, CableRun run) {
        Joint joint = report.joint();
        boolean coil = joint.from() instanceof Device.Source source && source.pickup().kind() == Pickup.Kind.MAGNETIC;
        boolean bare = coil || joint.from() instanceof Device.Source source && source.pickup().isUnbufferedPiezo();
        double longest = bare ? run.cable().longestHighImpedanceMetres()
            : joint.isBalanced() ? run.cable().longestLowImpedanceMetres()
            : Math.min(LONGEST_UNBALANCED_METRES, run.cable().longestLowImpedanceMetres());
        // A coil's treble is shaped by its cable at any length: only the length itself is judged there.
        double treble = coil ? 0 : report.cableTrebleDb();
        if (run.metres() > FAR_TOO_LONG * longest || treble > TREBLE_LOST_DB || report.cableLevelDb() > LEVEL_LOST_DB) {
            return List.of(tooLong(Fit.WRONG, report, run, longest));
        }
        boolean noticed = run.metres() > longest || treble > TREBLE_HEARD_DB
            || report.cableLevelDb() > LEVEL_HEARD_DB && run.metres() > SHORT_METRES;
        return noticed ? List.of(tooLong(Fit.TOLERABLE, report, run, longest)) : List.of();
    }

    private static WiringVerdict tooLong(Fit fit, JointReport report, CableRun run, double longestMetres) {
        return WiringVerdict.of(WiringFault.CABLE_TOO_LONG, fit, report.joint(), run.metres(), longestMetres, report.cableLevelDb(),
            report.cableTrebleDb(), run.metres() > longestMetres ? 1.0 : 0.0);
    }
}
