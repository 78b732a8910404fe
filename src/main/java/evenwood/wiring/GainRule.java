package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.PluggedBox;
import evenwood.rig.SignalKind;
import java.util.ArrayList;
import java.util.List;

/**
 * Whether the gains help each other.
 *
 * <p>One stage that turns up what another turns down buys noise or distortion for nothing. Source: common practice; the limits
 * are ours.
 */
final class GainRule {
    private static final double NOTICED_DB = 6;
    private static final double MUCH_DB = 12;
    /** A pad is not needed when the socket behind it would still have this much room without it. */
    private static final double ROOM_DB = 3;
    private static final double FULL_SCALE_ROOM_DB = 3;

    private GainRule() { }

    static List<WiringVerdict> verdicts(WayReport way) {
        List<WiringVerdict> verdicts = new ArrayList<>();
        for (int i = 0; i < way.joints().size(); i++) {
            for (int k = i + 1; k < way.joints().size(); k++) {
                fight(way, i, k, verdicts);
            }
        }
        boolean set = way.input().gainDb().isPresent();
        if (set && way.input().input().digital() && way.peakDbfs() > -FULL_SCALE_ROOM_DB) {
            verdicts.add(WiringVerdict.of(WiringFault.GAIN_TOO_HIGH, way.peakDbfs() > 0 ? Fit.WRONG : Fit.TOLERABLE, way.last().joint(),
                way.peakDbfs(), way.gainDb(), way.suggestedGainDb()));
        }
        return verdicts;
    }

    private static void fight(WayReport way, int earlier, int later, List<WiringVerdict> verdicts) {
        if (way.joints().get(later).joint().from().output() == SignalKind.SPEAKER) {
            return; // a power amplifier's gain makes the loudness; the pad behind it is needed
        }
        double first = gainDb(way, earlier);
        double second = gainDb(way, later);
        double wasted = Math.min(Math.abs(first), Math.abs(second));
        boolean upThenDown = first >= NOTICED_DB && second <= -NOTICED_DB;
        boolean downThenUp = first <= -NOTICED_DB && second >= NOTICED_DB && needless(way.joints().get(earlier), -first);
        if (upThenDown || downThenUp) {
            verdicts.add(WiringVerdict.of(WiringFault.GAINS_FIGHT, wasted >= MUCH_DB ? Fit.WRONG : Fit.TOLERABLE, way.joints().get(later).joint(),
                way.joints().get(earlier).joint().to().name(), first, way.joints().get(later).joint().to().name(), second));
        }
    }

    private static boolean needless(JointReport report, double cutDb) {
        return report.headroomDb().isEmpty() || report.headroomDb().getAsDouble() - cutDb >= ROOM_DB;
    }

    /** What the socket's device does to the level by its controls; a passive DI's transformer is no control. */
    private static double gainDb(WayReport way, int joint) {
        if (way.joints().get(joint).joint().to() instanceof Device.Between between) {
            PluggedBox plugged = between.plugged();
            return plugged.box().kind() == Box.Kind.PAD ? -padDb(plugged.box()) : plugged.wholeGainDb();
        }
        return way.input().gainDb().orElse(0);
    }

    private static double padDb(Box box) {
        return 20 * Math.log10((box.padSeriesOhms() + box.padShuntOhms()) / box.padShuntOhms());
    }
}
