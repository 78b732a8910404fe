package evenwood.judge;

import evenwood.measure.Note;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Crackle and dropouts, by how often they come.
 *
 * <p>Source of the limits: our choice. One click in a minute is slight, a few are clear; a lost stretch of sound is never
 * slight. A click at the beginning of a note may be the pick or the nail on the string; a bad contact does not wait for
 * the player, so only clicks away from attacks are counted.
 */
final class InterruptionRule {
    private static final int CLEAR_CLICKS = 3;
    private static final double CLEAR_CLICKS_PER_MINUTE = 2;
    private static final double STRONG_CLICKS_PER_MINUTE = 20;
    private static final int STRONG_DROPOUTS = 5;
    private static final double BEFORE_ATTACK_SECONDS = 0.01;
    private static final double AFTER_ATTACK_SECONDS = 0.03;

    private InterruptionRule() { }

    static List<Finding> findings(TakeReadings readings) {
        List<Finding> findings = new ArrayList<>();
        int clicks = clicksAwayFromAttacks(readings);
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

    /** All clicks, less the share of the known ones that lie on an attack. */
    private static int clicksAwayFromAttacks(TakeReadings readings) {
        List<Double> known = readings.clicks().startSeconds();
        if (known.isEmpty()) {
            return readings.clicks().count();
        }
        double[] attacks = readings.notes().notes().stream().mapToDouble(Note::startSeconds).sorted().toArray();
        long away = known.stream().filter(seconds -> !isOnAttack(seconds, attacks)).count();
        return (int) Math.round((double) away / known.size() * readings.clicks().count());
    }

    private static boolean isOnAttack(double seconds, double[] attacks) {
        int place = Arrays.binarySearch(attacks, seconds - AFTER_ATTACK_SECONDS);
        int next = place >= 0 ? place : -place - 1;
        return next < attacks.length && attacks[next] <= seconds + BEFORE_ATTACK_SECONDS;
    }

    private static Severity crackle(int clicks, double seconds) {
        double perMinute = clicks / Math.max(1.0, seconds / 60);
        if (clicks < CLEAR_CLICKS || perMinute < CLEAR_CLICKS_PER_MINUTE) {
            return Severity.SLIGHT;
        }
        return perMinute >= STRONG_CLICKS_PER_MINUTE ? Severity.STRONG : Severity.CLEAR;
    }
}
