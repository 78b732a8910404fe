package evenwood.measure;

/**
 * The peaks of the newest spectrum that are worth a closer look: narrow, standing out, and louder than before.
 *
 * <p>How: comparisons of powers only, cheapest first, because most bins are no peak and most peaks have not risen.
 * <p>Thread: one owner; nothing here allocates but the constructor.
 */
final class RisenPeaks {
    /** What stands around a peak: the bins four to eight away on both sides. */
    static final int NEAREST_AROUND = 4;
    static final int FARTHEST_AROUND = 8;

    private static final int LEAST_HOPS = 5;
    /** −100 dBFS. */
    private static final float FAINTEST = 1e-10f;
    /** 6 dB over the mean of what stands around. */
    private static final float PROMINENCE = 4;
    /** 3 dB louder than a third of a second ago and longer, 1 dB than a sixth: a note once struck dies away by then. */
    private static final int[] LOOKS_BACK_HOPS = {8, 4, 14, 19, 24};
    private static final float[] LEAST_RISES = {2, 1.26f, 2, 2, 2};
    /** 4 dB under all there is: perhaps a howl at the amplifier's limit, which grows no more. */
    private static final double ALL_OVER_ONE_LINE = 2.5;

    private final int lowestBin;
    private final int highestBin;
    private final int[] bins;
    private int count;

    RisenPeaks(int lowestBin, int highestBin) {
        this.lowestBin = lowestBin;
        this.highestBin = highestBin;
        bins = new int[Math.max(1, highestBin - lowestBin)];
    }

    /** Looks at the newest spectrum and says how many there are. */
    int find(RecentSpectra spectra) {
        count = 0;
        if (spectra.depth() < LEAST_HOPS) {
            return 0;
        }
        float[] power = spectra.hopsAgo(0);
        double nearlyAll = spectra.total(0) / ALL_OVER_ONE_LINE;
        for (int k = lowestBin; k < highestBin; k++) {
            float p = power[k];
            if (p > FAINTEST && p > power[k - 1] && p >= power[k + 1] && p > 4 * power[k - 4] && p > 4 * power[k + 4]
                && (hasRisen(spectra, p, k) || p > nearlyAll) && standsOut(power, k)) {
                bins[count++] = k;
            }
        }
        return count;
    }

    int bin(int index) {
        return bins[index];
    }

    private static boolean hasRisen(RecentSpectra spectra, float power, int bin) {
        int oldest = spectra.depth() - 1;
        for (int i = 0; i < LOOKS_BACK_HOPS.length; i++) {
            if (LOOKS_BACK_HOPS[i] <= oldest && power < LEAST_RISES[i] * RecentSpectra.top(spectra.hopsAgo(LOOKS_BACK_HOPS[i]), bin)) {
                return false;
            }
        }
        return true;
    }

    private static boolean standsOut(float[] power, int bin) {
        float around = 0;
        for (int away = NEAREST_AROUND; away <= FARTHEST_AROUND; away++) {
            around += power[Math.max(0, bin - away)] + power[bin + away];
        }
        return power[bin] * 2 * (FARTHEST_AROUND - NEAREST_AROUND + 1) > PROMINENCE * around;
    }
}
