package evenwood.wiring;

import evenwood.rig.SignalKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether levels suit the sockets: not over what they take, not far under what they are made for.
 *
 * <p>Source: headroom by arithmetic from the presets; consumer line level −10 dBV (reference §7.7); how quiet is too quiet as
 * for a take (6 and 18 dB under the target window, our choice).
 */
final class LevelRule {
    private static final double LITTLE_HEADROOM_DB = 3;
    private static final double CONSUMER_LINE_DBU = -7.78;
    private static final double UNDER_LINE_DB = 10;
    private static final double FAR_UNDER_LINE_DB = 20;
    /** From the middle of the target window to its lower end. */
    private static final double WINDOW_DB = 3;
    private static final double QUIET_DB = 6;
    private static final double VERY_QUIET_DB = 18;

    private LevelRule() { }

    static List<WiringVerdict> verdicts(WayReport way) {
        List<WiringVerdict> verdicts = new ArrayList<>();
        for (JointReport report : way.joints()) {
            if (report.joint().from().output() == SignalKind.SPEAKER) {
                continue;
            }
            report.headroomDb().ifPresent(headroom -> high(report, headroom, verdicts));
            outputOverload(report, verdicts);
            low(report, verdicts);
        }
        JointReport last = way.last();
        double quiet = way.gainShortDb() - WINDOW_DB;
        if (last.joint().to().accepts() != SignalKind.SPEAKER && quiet > QUIET_DB) {
            Fit fit = quiet > VERY_QUIET_DB ? Fit.WRONG : Fit.TOLERABLE;
            boolean told = verdicts.stream().anyMatch(verdict -> verdict.fault() == WiringFault.LEVEL_TOO_LOW && verdict.fit().compareTo(fit) >= 0);
            if (!told) {
                verdicts.removeIf(verdict -> verdict.fault() == WiringFault.LEVEL_TOO_LOW);
                verdicts.add(tooLow(fit, last));
            }
        }
        return verdicts;
    }

    private static void high(JointReport report, double headroomDb, List<WiringVerdict> verdicts) {
        if (headroomDb < LITTLE_HEADROOM_DB) {
            verdicts.add(WiringVerdict.of(WiringFault.LEVEL_TOO_HIGH, headroomDb < 0 ? Fit.WRONG : Fit.TOLERABLE, report.joint(),
                report.peakDbu(), report.peakDbu() + headroomDb, report.joint().to().name()));
        }
    }

    private static void outputOverload(JointReport report, List<WiringVerdict> verdicts) {
        double unloaded = report.peakDbu() + report.loadingDb();
        if (report.joint().from() instanceof Device.Between between && !between.box().isPassive() && between.maximumOutputDbu().isPresent()
            && unloaded > between.maximumOutputDbu().getAsDouble()) {
            verdicts.add(WiringVerdict.of(WiringFault.OUTPUT_OVERLOADS, Fit.WRONG, report.joint(), unloaded,
                between.maximumOutputDbu().getAsDouble(), between.name()));
        }
    }

    /** A microphone's thousandths of a volt into a socket for tenths or whole ones. */
    private static void low(JointReport report, List<WiringVerdict> verdicts) {
        boolean wantsMore = report.joint().to().accepts() == SignalKind.LINE || report.joint().to().accepts() == SignalKind.INSTRUMENT;
        double under = CONSUMER_LINE_DBU - report.peakDbu();
        boolean microphone = report.joint().from().output() == SignalKind.MICROPHONE;
        if (wantsMore && microphone && under > UNDER_LINE_DB) {
            verdicts.add(tooLow(under > FAR_UNDER_LINE_DB ? Fit.WRONG : Fit.TOLERABLE, report));
        }
    }

    private static WiringVerdict tooLow(Fit fit, JointReport report) {
        return WiringVerdict.of(WiringFault.LEVEL_TOO_LOW, fit, report.joint(), report.peakDbu(), report.joint().to().name());
    }
}
