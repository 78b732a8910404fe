package evenwood.measure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Whether eight frames (0.38 s) in a row are as steady as noise or hum.
 *
 * <p>How: the band levels may wander no more than those of steady noise do, neither from frame to frame nor from the
 * first half to the second, so a note dying away does not pass. Source: our choice; the scatter of steady noise is that
 * of {@link ActivityBands}.
 */
final class SteadyStretch {
    static final int FRAMES = 8;
    private static final double WIDEST_DB = 3;
    private static final double MOST_WANDER = 2;

    private final ActivityFrames frames;

    SteadyStretch(ActivityFrames frames) {
        this.frames = frames;
    }

    /** The start of the steady stretch with the lowest mean of its band levels; −1 when there is none. */
    int lowest() {
        boolean[] noneTaken = new boolean[frames.count()];
        int best = -1;
        double bestDb = Double.POSITIVE_INFINITY;
        for (int start = 0; start + FRAMES <= frames.count(); start++) {
            double mean = meanDb(start, noneTaken);
            if (mean < bestDb && isSteady(start)) {
                best = start;
                bestDb = mean;
            }
        }
        return best;
    }

    /** Starts of steady stretches that do not overlap and have no taken frames, those with the lowest levels first. */
    List<Integer> others(boolean[] taken) {
        List<Integer> starts = new ArrayList<>();
        int start = 0;
        while (start + FRAMES <= frames.count()) {
            boolean steady = meanDb(start, taken) < Double.POSITIVE_INFINITY && isSteady(start);
            if (steady) {
                starts.add(start);
            }
            start += steady ? FRAMES : 1;
        }
        starts.sort(Comparator.comparingDouble(at -> meanDb(at, taken)));
        return starts;
    }

    double[] bandMeansDb(int start) {
        double[] means = new double[frames.bands().count()];
        for (int b = 0; b < means.length; b++) {
            means[b] = frames.meanBandDb(b, start, FRAMES);
        }
        return means;
    }

    /** Mean of the band levels, or infinity when it plainly moves, is empty or taken. */
    private double meanDb(int start, boolean[] taken) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double sum = 0;
        for (int i = start; i < start + FRAMES; i++) {
            if (taken[i] || frames.isEmpty(i)) {
                return Double.POSITIVE_INFINITY;
            }
            double mean = frames.meanDb(i);
            lowest = Math.min(lowest, mean);
            highest = Math.max(highest, mean);
            sum += mean;
        }
        return highest - lowest > WIDEST_DB ? Double.POSITIVE_INFINITY : sum / FRAMES;
    }

    private boolean isSteady(int start) {
        double wander = 0;
        double drift = 0;
        int bands = frames.bands().count();
        double most = MOST_WANDER * bands;
        for (int b = 0; b < bands && wander <= most && drift <= most; b++) {
            double scatter = frames.bands().scatterDb(b);
            double firstHalf = frames.meanBandDb(b, start, FRAMES / 2);
            double secondHalf = frames.meanBandDb(b, start + FRAMES / 2, FRAMES / 2);
            double middle = (firstHalf + secondHalf) / 2;
            for (int i = start; i < start + FRAMES; i++) {
                double off = (frames.bandDb(i, b) - middle) / scatter;
                wander += off * off / (FRAMES - 1);
            }
            double change = (secondHalf - firstHalf) / scatter;
            drift += change * change * FRAMES / 4;
        }
        return wander <= most && drift <= most;
    }
}
