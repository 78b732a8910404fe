package evenwood.measure;

import java.util.Arrays;

/**
 * Finds the noise that is always there: the steady stretch with the lowest levels of all.
 *
 * <p>In: band levels a frame. Out: the floor of each band, or "none" when nothing in the take is steady enough.
 * <p>How: over every stretch of eight frames (0.38 s) the levels may wander no more than steady noise does, neither from
 * frame to frame nor from its first half to its second, so a note dying away does not pass. The one with the lowest mean
 * of its band levels is taken and widened to all frames that look like it. A floor is always there: if other music has
 * less in some band while it has more in another, the stretch was a held note, unless it lies far below the playing.
 * Source: our choice, after Martin 2001.
 */
final class SteadyFloor {
    private static final int STRETCH = 8;
    private static final double WIDEST_STRETCH_DB = 3;
    private static final double MOST_WANDER = 2;
    private static final double FAR_BELOW_DB = 25;
    private static final double MOST_CONTRADICTIONS = 0.01;
    private static final int ROUNDS = 3;

    private final ActivityBands bands;
    private final HopHistory levels;
    private final long first;
    private final int frames;
    private final double[] floorDb;
    private final float[] meanDb;
    private final boolean found;

    SteadyFloor(ActivityBands bands, HopHistory levels, double loudDbfs) {
        this.bands = bands;
        this.levels = levels;
        first = levels.firstHop();
        frames = (int) (levels.endHop() - first);
        floorDb = new double[bands.count()];
        meanDb = new float[frames];
        for (int i = 0; i < frames; i++) {
            meanDb[i] = meanOfBandsDb(i);
        }
        found = search(loudDbfs);
    }

    boolean found() {
        return found;
    }

    double floorDb(int band) {
        return floorDb[band];
    }

    boolean isEmpty(int frame) {
        return levels.get(first + frame, bands.count()) <= ActivityBands.EMPTY_DB;
    }

    private boolean search(double loudDbfs) {
        int start = lowestSteadyStretch();
        if (start < 0) {
            return false;
        }
        double levelDb = 0;
        for (int b = 0; b < bands.count(); b++) {
            floorDb[b] = mean(b, start, STRETCH);
        }
        for (int i = 0; i < STRETCH; i++) {
            levelDb += levels.get(first + start + i, bands.count()) / STRETCH;
        }
        for (int round = 0; round < ROUNDS; round++) {
            widen();
        }
        return levelDb < loudDbfs - FAR_BELOW_DB || contradictions() <= Math.max(2 * STRETCH, MOST_CONTRADICTIONS * frames);
    }

    private int lowestSteadyStretch() {
        int best = -1;
        double bestDb = Double.POSITIVE_INFINITY;
        for (int start = 0; start + STRETCH <= frames; start++) {
            double lowest = Double.POSITIVE_INFINITY;
            double highest = Double.NEGATIVE_INFINITY;
            double sum = 0;
            boolean empty = false;
            for (int i = start; i < start + STRETCH; i++) {
                lowest = Math.min(lowest, meanDb[i]);
                highest = Math.max(highest, meanDb[i]);
                sum += meanDb[i];
                empty |= isEmpty(i);
            }
            if (!empty && highest - lowest <= WIDEST_STRETCH_DB && sum / STRETCH < bestDb && isSteady(start)) {
                best = start;
                bestDb = sum / STRETCH;
            }
        }
        return best;
    }

    private boolean isSteady(int start) {
        double wander = 0;
        double drift = 0;
        for (int b = 0; b < bands.count(); b++) {
            double scatter = bands.scatterDb(b);
            double firstHalf = mean(b, start, STRETCH / 2);
            double secondHalf = mean(b, start + STRETCH / 2, STRETCH / 2);
            double middle = (firstHalf + secondHalf) / 2;
            for (int i = 0; i < STRETCH; i++) {
                double off = (levels.get(first + start + i, b) - middle) / scatter;
                wander += off * off / (STRETCH - 1);
            }
            double change = (secondHalf - firstHalf) / scatter;
            drift += change * change * STRETCH / 4;
        }
        return wander <= MOST_WANDER * bands.count() && drift <= MOST_WANDER * bands.count();
    }

    private void widen() {
        double[] sum = new double[bands.count()];
        int members = 0;
        for (int i = 0; i < frames; i++) {
            if (!isEmpty(i) && looksLikeFloor(i)) {
                members++;
                for (int b = 0; b < sum.length; b++) {
                    sum[b] += levels.get(first + i, b);
                }
            }
        }
        for (int b = 0; b < sum.length && members >= STRETCH; b++) {
            floorDb[b] = sum[b] / members;
        }
    }

    private boolean looksLikeFloor(int frame) {
        for (int b = 0; b < bands.count(); b++) {
            if (levels.get(first + frame, b) - floorDb[b] > bands.reachDb(b)) {
                return false;
            }
        }
        return true;
    }

    private int contradictions() {
        int count = 0;
        for (int start = 0; start + STRETCH / 2 <= frames; start++) {
            boolean under = false;
            boolean over = false;
            for (int b = 0; b < bands.count(); b++) {
                double off = mean(b, start, STRETCH / 2) - floorDb[b];
                double margin = 3 + 2 * bands.scatterDb(b);
                under |= off < -margin;
                over |= off > margin;
            }
            count += under && over ? 1 : 0;
        }
        return count;
    }

    private double mean(int band, int start, int count) {
        double sum = 0;
        for (int i = start; i < start + count; i++) {
            sum += levels.get(first + i, band);
        }
        return sum / count;
    }

    private float meanOfBandsDb(int frame) {
        double sum = 0;
        for (int b = 0; b < bands.count(); b++) {
            sum += levels.get(first + frame, b);
        }
        return (float) (sum / bands.count());
    }

    /** The level a share of the non-empty frames stays under; −Infinity when there are none. */
    static double percentileDbfs(HopHistory levels, int column, double share) {
        double[] all = new double[(int) (levels.endHop() - levels.firstHop())];
        int count = 0;
        for (long hop = levels.firstHop(); hop < levels.endHop(); hop++) {
            float level = levels.get(hop, column);
            if (level > ActivityBands.EMPTY_DB) {
                all[count++] = level;
            }
        }
        Arrays.sort(all, 0, count);
        return count == 0 ? Double.NEGATIVE_INFINITY : all[Math.min(count - 1, (int) (share * count))];
    }
}
