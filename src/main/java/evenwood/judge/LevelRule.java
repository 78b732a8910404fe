package evenwood.judge;

import evenwood.measure.TakeReadings;
import java.util.List;
import java.util.Optional;

/**
 * Too hot or too quiet for the tap we listen at.
 *
 * <p>How: the true peak of the whole take is held against the target window. Source: the window is our choice; −1 dBTP is
 * the highest peak EBU R 128 permits in production. Over the window but under −1 dBTP is only slight: nothing is lost yet.
 * Where a sweep told up to which peak the box stays clean, that counts as well, when it is lower.
 * Under the window, noise decides: a quiet take far above its noise is slight, one whose playing sinks towards the noise
 * is clear or strong.
 */
final class LevelRule {
    /** EBU R 128, maximum true peak in production (EBU Tech 3343). */
    private static final double HIGHEST_PERMITTED_DBTP = -1;
    /** A decibel or two outside the window is no finding: a player does not play twice alike. Our choice. */
    private static final double TOLERANCE_DB = 2;
    private static final double FAR_UNDER_DB = 18;
    private static final double VERY_FAR_UNDER_DB = 36;
    private static final double LITTLE_NOISE_ROOM_DB = 30;
    private static final double HARDLY_ANY_NOISE_ROOM_DB = 15;
    /** A measured peak is sure; what is not sure is whether the hardest playing was in the take. */
    private static final double SURE = 0.98;
    private static final double MOSTLY_SURE = 0.9;

    private LevelRule() { }

    static List<Finding> findings(TakeReadings readings, TargetWindow window) {
        if (!readings.hasPlaying()) {
            return List.of();
        }
        double peak = readings.truePeak().truePeakDbtp();
        if (window.isBoxTheLimit() && peak > window.cleanCeilingDbtp()) {
            boolean distorts = peak > window.cleanUpToDbfs().getAsDouble();
            return List.of(new Finding(Fault.TOO_HOT, distorts ? Severity.CLEAR : Severity.SLIGHT, distorts ? SURE : MOSTLY_SURE,
                Statement.of("too-hot.box", peak, window.cleanUpToDbfs().getAsDouble(), window.underOnsetDb())));
        }
        if (peak > window.highDbtp()) {
            return List.of(new Finding(Fault.TOO_HOT, hot(peak, window), peak > window.highDbtp() + TOLERANCE_DB ? SURE : MOSTLY_SURE,
                Statement.of(peak > 0 ? "too-hot.over" : "too-hot.evidence", Math.abs(peak), window.lowDbtp(), window.highDbtp())));
        }
        return quiet(readings, window).map(severity -> List.of(new Finding(Fault.TOO_QUIET, severity, MOSTLY_SURE,
            Statement.of("too-quiet.evidence", peak, window.lowDbtp() - peak, window.lowDbtp(), window.highDbtp())))).orElse(List.of());
    }

    private static Severity hot(double peakDbtp, TargetWindow window) {
        return peakDbtp > HIGHEST_PERMITTED_DBTP ? Severity.CLEAR : Severity.SLIGHT;
    }

    private static Optional<Severity> quiet(TakeReadings readings, TargetWindow window) {
        double under = window.lowDbtp() - readings.truePeak().truePeakDbtp();
        if (under <= TOLERANCE_DB) {
            return Optional.empty();
        }
        double noiseRoom = readings.signalToNoiseDb();
        if (under > VERY_FAR_UNDER_DB || under > FAR_UNDER_DB && noiseRoom < HARDLY_ANY_NOISE_ROOM_DB) {
            return Optional.of(Severity.STRONG);
        }
        return Optional.of(under > FAR_UNDER_DB || noiseRoom < LITTLE_NOISE_ROOM_DB && under > TOLERANCE_DB * 3 ? Severity.CLEAR : Severity.SLIGHT);
    }
}
