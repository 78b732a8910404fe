package evenwood.measure;

/**
 * A frequency band as a sum of spectrum bins, of which the two at its edges count in part.
 *
 * <p>How: bin k stands for k ± ½ bins; the share of that inside the band is its weight. Limits: meets IEC 61260-1 class 1
 * for third-octave bands centred at least 20 bins up, with the Hann window (ThirdOctaveMaskReferenceTest).
 */
final class BinBand {
    private final int firstBin;
    private final int lastBin;
    private final float firstWeight;
    private final float lastWeight;

    BinBand(double lowerHz, double upperHz, double binWidthHz, int bins) {
        double lower = lowerHz / binWidthHz;
        double upper = Math.min(upperHz / binWidthHz, bins - 0.5);
        firstBin = (int) Math.floor(lower + 0.5);
        lastBin = Math.min(bins - 1, (int) Math.floor(upper + 0.5));
        boolean one = firstBin == lastBin;
        firstWeight = (float) (one ? upper - lower : firstBin + 0.5 - lower);
        lastWeight = (float) (one ? 0 : upper - (lastBin - 0.5));
    }

    /** Sum of the band; four partial sums, because one alone waits for every addition. */
    double sum(float[] bins) {
        double sum = (double) firstWeight * bins[firstBin] + (double) lastWeight * bins[lastBin];
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int k = firstBin + 1;
        for (; k + 3 < lastBin; k += 4) {
            a += bins[k];
            b += bins[k + 1];
            c += bins[k + 2];
            d += bins[k + 3];
        }
        for (; k < lastBin; k++) {
            a += bins[k];
        }
        return sum + (a + b) + (c + d);
    }
}
