package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.Pickup;
import evenwood.rig.SignalKind;
import java.util.List;

/**
 * Whether what takes the signal asks little enough of what gives it.
 *
 * <p>A piezo is a capacitance: the load sets where its bass ends (reference §7.1). A coil loses its resonance under about
 * 250 kΩ (§7.2). Every other source wants ten times its own impedance (§7.3), microphones and what goes into their inputs
 * five times (IEC 60268-15 as remembered there).
 */
final class ImpedanceRule {
    /** Corner at half the lowest note: 1 dB lost there. */
    private static final double CORNER_UNHEARD = 0.5;
    /** Corner an octave over the lowest note: its second harmonic is 3 dB down. Our choice for "it no longer works". */
    private static final double CORNER_TOO_HIGH = 2;
    private static final double COIL_WANTS_OHMS = 220_000;
    private static final double COIL_NEEDS_OHMS = 50_000;
    private static final double BRIDGING = 10;
    private static final double MICROPHONE_BRIDGING = 5;
    /** The capacitance of a short cable makes 9.99 out of 10; nobody means that. */
    private static final double ROUNDING = 0.98;
    /** 2.5 dB lost, and an output that may not be able to drive it. */
    private static final double LEAST_BRIDGING = 3;

    private static final double HALF_POWER_DB = 10 * Math.log10(2);

    private ImpedanceRule() { }

    static List<WiringVerdict> verdicts(JointReport report, ChainReport chain) {
        Joint joint = report.joint();
        if (joint.from().output() == SignalKind.SPEAKER || joint.to().accepts() == SignalKind.SPEAKER) {
            return List.of();
        }
        boolean bare = joint.from() instanceof Device.Source source && (source.pickup().isUnbufferedPiezo() || source.pickup().kind() == Pickup.Kind.MAGNETIC);
        if (bare && joint.onThru()) {
            return List.of(); // the same terminals as in the main line, where all that hangs on them is counted
        }
        if (joint.from() instanceof Device.Source source && source.pickup().isUnbufferedPiezo()) {
            return piezo(report, chain.lowestHz());
        }
        if (joint.from() instanceof Device.Source source && source.pickup().kind() == Pickup.Kind.MAGNETIC) {
            return coil(report);
        }
        return passesOnAPickup(joint, chain) ? List.of() : bridging(report);
    }

    private static List<WiringVerdict> piezo(JointReport report, double lowestHz) {
        double corner = report.bassCornerHz().orElse(0);
        if (corner <= CORNER_UNHEARD * lowestHz) {
            return List.of();
        }
        boolean passiveDi = report.joint().to() instanceof Device.Between between && between.box().kind() == Box.Kind.PASSIVE_DI;
        return List.of(WiringVerdict.of(passiveDi ? WiringFault.PIEZO_ON_PASSIVE_DI : WiringFault.PIEZO_LOADED,
            corner > CORNER_TOO_HIGH * lowestHz ? Fit.WRONG : Fit.TOLERABLE, report.joint(),
            report.loadOhms(), corner, lostDb(report, corner, lowestHz), lowestHz, report.joint().to().name()));
    }

    /** From the level 3 dB over the corner's; outside hearing by the first-order formula. */
    private static double lostDb(JointReport report, double cornerHz, double lowestHz) {
        return cornerHz < Response.HIGHEST_HZ ? report.response().atHz(cornerHz) + HALF_POWER_DB - report.response().atHz(lowestHz)
            : 10 * Math.log10(1 + Math.pow(cornerHz / lowestHz, 2));
    }

    private static List<WiringVerdict> coil(JointReport report) {
        if (report.loadOhms() >= COIL_WANTS_OHMS || carriesOnlyCapacitance(report)) {
            return List.of();
        }
        return List.of(WiringVerdict.of(WiringFault.COIL_LOADED, report.loadOhms() < COIL_NEEDS_OHMS ? Fit.WRONG : Fit.TOLERABLE,
            report.joint(), report.loadOhms(), COIL_WANTS_OHMS, report.joint().to().name()));
    }

    /** An input of 1 MΩ with some 150 pF beside it is still 1 MΩ: its resistance counts, not its capacitance. */
    private static boolean carriesOnlyCapacitance(JointReport report) {
        return report.joint().to() instanceof Device.End end && end.input().inputOhms() >= COIL_WANTS_OHMS && report.loadOhms() >= COIL_NEEDS_OHMS;
    }

    /** Behind a passive box the impedance is the pickup's own, already judged where the pickup is plugged in. */
    private static boolean passesOnAPickup(Joint joint, ChainReport chain) {
        Pickup.Kind kind = chain.connection().pickup().kind();
        boolean bare = kind == Pickup.Kind.PIEZO || kind == Pickup.Kind.MAGNETIC;
        return bare && joint.from() instanceof Device.Between between && between.box().isPassive()
            && chain.joints().get(0).joint().to().equals(between);
    }

    private static List<WiringVerdict> bridging(JointReport report) {
        double ratio = report.loadOhms() / report.sourceOhms();
        boolean microphone = report.joint().from().output() == SignalKind.MICROPHONE || report.joint().to().accepts() == SignalKind.MICROPHONE;
        double wanted = microphone ? MICROPHONE_BRIDGING : BRIDGING;
        if (ratio >= ROUNDING * wanted) {
            return List.of();
        }
        return List.of(WiringVerdict.of(WiringFault.IMPEDANCE_LOW, ratio < LEAST_BRIDGING ? Fit.WRONG : Fit.TOLERABLE, report.joint(),
            report.sourceOhms(), report.loadOhms(), report.loadingDb(), wanted));
    }
}
