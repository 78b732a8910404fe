package evenwood.measure;

/**
 * The last second of spectra, to look back how a frequency became as loud as it is.
 *
 * <p>Levels are those of {@link QuickDb}.
 * <p>Thread: one owner; only the constructor allocates.
 */
final class RecentSpectra {
    private final float[][] powers;
    private final double[] totals;
    private long heard;

    RecentSpectra(int hops, int bins) {
        powers = new float[hops][bins];
        totals = new double[hops];
    }

    /** Keeps the lower part of a spectrum, as many bins as there is room for. */
    void keep(float[] power) {
        int slot = (int) (heard++ % powers.length);
        int bins = bins();
        System.arraycopy(power, 0, powers[slot], 0, bins);
        double even = 0;
        double odd = 0;
        for (int k = 0; k + 1 < bins; k += 2) {
            even += power[k];
            odd += power[k + 1];
        }
        totals[slot] = even + odd;
    }

    /** How many hops one can look back, now included. */
    int depth() {
        return (int) Math.min(heard, powers.length);
    }

    int capacity() {
        return powers.length;
    }

    int bins() {
        return powers[0].length;
    }

    float[] hopsAgo(int hops) {
        return powers[slot(hops)];
    }

    /** Power of all that is kept. */
    double total(int hopsAgo) {
        return totals[slot(hopsAgo)];
    }

    /** Level of all that is kept. */
    double totalDb(int hopsAgo) {
        return QuickDb.of(totals[slot(hopsAgo)]);
    }

    /** Level of the loudest of a bin and its two neighbours. */
    double levelDb(int hopsAgo, int bin) {
        return QuickDb.of(top(hopsAgo(hopsAgo), bin));
    }

    /** Power of the loudest of a bin and its two neighbours. */
    static float top(float[] power, int bin) {
        return Math.max(power[bin], Math.max(power[bin - 1], power[bin + 1]));
    }

    /** Mean level of the bins {@code nearest} to {@code farthest} away on both sides. */
    double surroundingsDb(int hopsAgo, int bin, int nearest, int farthest) {
        float[] power = hopsAgo(hopsAgo);
        double sum = 0;
        int count = 0;
        for (int away = nearest; away <= farthest; away++) {
            if (bin - away > 0) {
                sum += power[bin - away];
                count++;
            }
            if (bin + away < power.length) {
                sum += power[bin + away];
                count++;
            }
        }
        return QuickDb.of(count == 0 ? 0 : sum / count);
    }

    /**
     * Where between the bins the peak at or next to a bin lies: the interpolation that is exact for a steady sine in a Hann
     * window. Source: three-point estimate of Agrež, IEEE Trans. Instrum. Meas. 51(2), 2002 (from memory, not re-read).
     */
    double peakBin(int hopsAgo, int bin) {
        float[] power = hopsAgo(hopsAgo);
        int top = power[bin - 1] > power[bin] ? bin - 1 : bin;
        top = power[bin + 1] > power[top] ? bin + 1 : top;
        double below = Math.sqrt(power[top - 1]);
        double above = Math.sqrt(power[top + 1]);
        double sum = below + 2 * Math.sqrt(power[top]) + above;
        return sum == 0 ? top : top + 2 * (above - below) / sum;
    }

    /** Standard deviation in bins of the peak over the newest hops: how steady its frequency is. */
    double peakWanderBins(int bin, int hops) {
        double sum = 0;
        double sumSquares = 0;
        for (int i = 0; i < hops; i++) {
            double away = peakBin(i, bin) - bin;
            sum += away;
            sumSquares += away * away;
        }
        return Math.sqrt(Math.max(0, sumSquares / hops - sum * sum / hops / hops));
    }

    void reset() {
        heard = 0;
    }

    private int slot(int hopsAgo) {
        return (int) ((heard - 1 - hopsAgo) % powers.length);
    }
}
