package evenwood.coach.hunt;

import evenwood.rig.HuntTable;

/**
 * How likely a measured change is when a trial cures, makes fall or rise, or does nothing.
 *
 * <p>How: normal distributions; a cure is 17 ± 5 dB less, a fall 5.5 ± 2 dB, a rise 8 ± 4 dB, staying 0 ± 0.8 dB, each widened by
 * the measurement's own uncertainty. Source: our choice: a cure leaves other noise some 10 to 25 dB down, a fall is heard as one from
 * about 3 dB on.
 */
final class ChangeLikelihood {
    /** Between a fall and a cure. */
    static final double GONE_UNDER_DB = -10;
    private static final double CURE_DB = -17;
    private static final double CURE_DEVIATION_DB = 5;
    private static final double FALL_DB = -5.5;
    private static final double FALL_DEVIATION_DB = 2;
    private static final double RISE_DB = 8;
    private static final double RISE_DEVIATION_DB = 4;
    private static final double STAY_DEVIATION_DB = 0.8;
    /** Something nobody thought of happens now and then: no measurement rules out anything for good. */
    private static final double SURPRISE = 0.002;

    private ChangeLikelihood() { }

    static double of(double changeDb, double deviationDb, HuntTable.Chance chance) {
        double likelihood = chance.cures() * normal(Math.max(changeDb, CURE_DB), CURE_DB, Math.hypot(CURE_DEVIATION_DB, deviationDb))
            + chance.falls() * normal(changeDb, FALL_DB, Math.hypot(FALL_DEVIATION_DB, deviationDb))
            + chance.stays() * normal(changeDb, 0, Math.hypot(STAY_DEVIATION_DB, deviationDb))
            + chance.rises() * normal(changeDb, RISE_DB, Math.hypot(RISE_DEVIATION_DB, deviationDb));
        return likelihood + SURPRISE / 100; // spread over a hundred decibels
    }

    private static double normal(double x, double mean, double deviation) {
        double z = (x - mean) / deviation;
        return Math.exp(-0.5 * z * z) / (deviation * Math.sqrt(2 * Math.PI));
    }
}
