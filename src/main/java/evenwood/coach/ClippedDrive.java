package evenwood.coach;

import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;

/**
 * By how many decibels the highest peaks wanted to go over a converter's full scale, told by how much of the playing was cut off.
 *
 * <p>How: the clipped samples' share of the playing grows steeply at first and slowly later, so its logarithm is read off a curve. Source: medians of
 * the tuning sources driven 2, 5, 8 and 11 dB over, rounded; the same phrase of another song differed by 0.9 dB (standard deviation; worked out
 * once, AfterEvaluation holds what comes of it).
 * <p>Limits: what was cut off is gone, so instruments with other peaks are off by a decibel or two; a difference of two takes of one player less.
 */
final class ClippedDrive {
    /** Of the difference of two takes. */
    static final double DEVIATION_DB = 0.9;
    /** Where nothing is cut off there may be no room left, or much: a little is assumed. Our choice. */
    private static final double ROOM_LEFT_DB = 1;
    private static final double[] DRIVE_DB = {2, 5, 8, 11};
    private static final double[] SHARE = {2 / 48_000.0, 35 / 48_000.0, 250 / 48_000.0, 730 / 48_000.0};
    private static final double LEAST_PLAYING_SECONDS = 0.1;

    private ClippedDrive() { }

    /** Negative when nothing was cut off. */
    static double db(TakeReadings readings) {
        double samples = readings.take().format().sampleRateHz() * Math.max(LEAST_PLAYING_SECONDS, readings.activity().playingSeconds());
        return isClipped(readings) ? Math.max(0, db(readings.distortion().clippedSamples() / samples)) : -ROOM_LEFT_DB;
    }

    static boolean isClipped(TakeReadings readings) {
        return readings.distortion().stage() == DistortionReading.Stage.CONVERTER && readings.distortion().clippedSamples() > 0;
    }

    /** Straight between the points over the logarithm, and on beyond them. */
    private static double db(double share) {
        int upper = 1;
        while (upper < SHARE.length - 1 && share > SHARE[upper]) {
            upper++;
        }
        double part = Math.log(share / SHARE[upper - 1]) / Math.log(SHARE[upper] / SHARE[upper - 1]);
        return DRIVE_DB[upper - 1] + part * (DRIVE_DB[upper] - DRIVE_DB[upper - 1]);
    }
}
