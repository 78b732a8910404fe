package evenwood.measure;

import java.util.Arrays;

/**
 * A noise that is always there: its level in each band, learned from the frames that look like it.
 */
final class SteadyFloor {
    private static final int ROUNDS = 2;
    private static final int FEWEST_FRAMES = SteadyStretch.FRAMES;
    private static final double CONTRADICTION_DB = 3;
    private static final int SMOOTHED = 4;

    private final ActivityFrames frames;
    private final double[] bandDb;

    SteadyFloor(ActivityFrames frames, double[] bandDb) {
        this.frames = frames;
        this.bandDb = bandDb;
        for (int round = 0; round < ROUNDS; round++) {
            learn();
        }
    }

    double bandDb(int band) {
        return bandDb[band];
    }

    double meanDb() {
        return Arrays.stream(bandDb).average().orElse(0);
    }

    /** No band lies above the floor by more than steady noise ever does. */
    boolean covers(int frame) {
        for (int b = 0; b < bandDb.length; b++) {
            if (frames.bandDb(frame, b) - bandDb[b] > frames.bands().reachDb(b)) {
                return false;
            }
        }
        return true;
    }

    /** Nor does any lie further under it than steady noise. */
    boolean isLike(int frame) {
        for (int b = 0; b < bandDb.length; b++) {
            double off = frames.bandDb(frame, b) - bandDb[b];
            if (off > frames.bands().reachDb(b) || off < -6 * frames.bands().scatterDb(b)) {
                return false;
            }
        }
        return true;
    }

    /**
     * In how many frames there is less than the floor in one band and more in another. A floor is always there: where
     * that happens often, the "floor" was a held note that others lack.
     */
    int contradictions() {
        int count = 0;
        for (int start = 0; start + SMOOTHED <= frames.count(); start += SMOOTHED / 2) {
            boolean under = false;
            boolean over = false;
            for (int b = 0; b < bandDb.length && !(under && over); b++) {
                double off = frames.meanBandDb(b, start, SMOOTHED) - bandDb[b];
                double margin = CONTRADICTION_DB + 2 * frames.bands().scatterDb(b);
                under |= off < -margin;
                over |= off > margin;
            }
            count += under && over ? SMOOTHED / 2 : 0;
        }
        return count;
    }

    private void learn() {
        double[] sum = new double[bandDb.length];
        int members = 0;
        for (int i = 0; i < frames.count(); i++) {
            if (!frames.isEmpty(i) && isLike(i)) {
                members++;
                for (int b = 0; b < sum.length; b++) {
                    sum[b] += frames.bandDb(i, b);
                }
            }
        }
        for (int b = 0; b < sum.length && members >= FEWEST_FRAMES; b++) {
            bandDb[b] = sum[b] / members;
        }
    }
}
