package evenwood.judge;

import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;

/**
 * Crackle and dropouts, by how often they come.
 *
 * <p>Source of the limits: our choice. One click in a minute is slight, a few are clear; a lost stretch of sound is never
 * slight.
 */
final class InterruptionRule {
    private static final int CLEAR_CLICKS = 3;
    private static final double CLEAR_CLICKS_PER_MINUTE = 2;
    private static final double STRONG_CLICKS_PER_MINUTE = 20;
    private static final int STRONG_DROPOUTS = 5;

    private InterruptionRule() { }

    static List<Finding> findings(TakeReadings readings) {
        List<Finding> findings = new ArrayList<>();
        int clicks = readings.clicks().count();
        if (clicks > 0) {
            findings.add(new Finding(Fault.CRACKLE, crackle(clicks, readings.take().durationSeconds()),
                clicks < CLEAR_CLICKS ? 0.7 : 0.95, Statement.of("crackle.evidence", clicks)));
        }
        int dropouts = readings.dropouts().count();
        if (dropouts > 0) {
            findings.add(new Finding(Fault.DROPOUT, dropouts >= STRONG_DROPOUTS ? Severity.STRONG : Severity.CLEAR,
                dropouts == 1 ? 0.8 : 0.95, Statement.of("dropout.evidence", dropouts)));
        }
        return findings;
    }

    private static Severity crackle(int clicks, double seconds) {
        double perMinute = clicks / Math.max(1.0, seconds / 60);
        if (clicks < CLEAR_CLICKS || perMinute < CLEAR_CLICKS_PER_MINUTE) {
            return Severity.SLIGHT;
        }
        return perMinute >= STRONG_CLICKS_PER_MINUTE ? Severity.STRONG : Severity.CLEAR;
    }
}
