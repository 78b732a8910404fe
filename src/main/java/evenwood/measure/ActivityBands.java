package evenwood.measure;

import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.special.Gamma;

/**
 * The bands in which playing is told from noise, and how far steady noise wanders in each of them.
 *
 * <p>Out: levels in dB, one a band, from one {@link ShortTimeSpectrum} frame; {@link #scatterDb} and {@link #reachDb}.
 * <p>How: third octaves from 35 Hz, never fewer than three bins, so that one mains harmonic cannot fill every band. The
 * power of steady Gaussian noise in {@code n} Hann bins is gamma distributed with shape
 * {@code ν = n² / (n + 2(n−1)·(2/3)² + 2(n−2)·(1/6)²)}. Source: the correlation of neighbouring bins of a Hann window,
 * 2/3 and 1/6 (Harris 1978); Welch 1967 for the gamma law. {@link #reachDb} is its upper 1-in-100 000 quantile over the
 * mean of the dB values (our choice: about one false frame in 20 minutes over all bands).
 * <p>Thread: immutable after construction.
 */
final class ActivityBands {
    /** A band without any power; far under the last bit of 24 (−144 dBFS) even for a single bin. */
    static final float EMPTY_DB = -200;
    private static final double LOWEST_HZ = 35;
    private static final double HIGHEST_HZ = 14_000;
    private static final int FEWEST_BINS = 3;
    private static final double FALSE_FRAME_PROBABILITY = 1e-5;
    private static final double DB_PER_NEPER = 10 / Math.log(10);
    /** Even wide bands of real noise wander this much (our choice). */
    private static final double LEAST_SCATTER_DB = 0.7;

    private final double binHz;
    private final int[] edgeBins;
    private final double[] scatterDb;
    private final double[] reachDb;

    ActivityBands(HopGrid grid) {
        binHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        double highestHz = Math.min(HIGHEST_HZ, 0.45 * grid.sampleRateHz());
        edgeBins = edges(binHz, highestHz);
        scatterDb = new double[edgeBins.length - 1];
        reachDb = new double[edgeBins.length - 1];
        for (int b = 0; b < scatterDb.length; b++) {
            double shape = shape(edgeBins[b + 1] - edgeBins[b]);
            scatterDb[b] = Math.max(LEAST_SCATTER_DB, DB_PER_NEPER * Math.sqrt(Gamma.trigamma(shape)));
            double quantile = new GammaDistribution(shape, 1).inverseCumulativeProbability(1 - FALSE_FRAME_PROBABILITY);
            reachDb[b] = Math.max(4 * LEAST_SCATTER_DB, DB_PER_NEPER * (Math.log(quantile) - Gamma.digamma(shape)));
        }
    }

    double lowerHz(int band) {
        return edgeBins[band] * binHz;
    }

    int count() {
        return scatterDb.length;
    }

    /** Standard deviation of a band's dB value from frame to frame in steady noise. */
    double scatterDb(int band) {
        return scatterDb[band];
    }

    /** How far above the mean of its dB values steady noise gets in one frame of 100 000. */
    double reachDb(int band) {
        return reachDb[band];
    }

    /** Level of one band of a spectrum, {@link #EMPTY_DB} at least. [audio thread] */
    float levelDb(int band, float[] power) {
        double sum = 0;
        for (int k = edgeBins[band]; k < edgeBins[band + 1]; k++) {
            sum += power[k];
        }
        return toDb(sum);
    }

    static float toDb(double power) {
        return power <= 1e-20 ? EMPTY_DB : (float) (10 * Math.log10(power));
    }

    private static int[] edges(double binHz, double highestHz) {
        int[] edges = new int[64];
        int count = 0;
        int last = (int) Math.ceil(highestHz / binHz);
        int next = Math.max(FEWEST_BINS, (int) Math.round(LOWEST_HZ / binHz));
        while (next < last) {
            edges[count++] = next;
            next = Math.max(next + FEWEST_BINS, (int) Math.round(next * Math.cbrt(2)));
        }
        edges[count++] = last;
        return java.util.Arrays.copyOf(edges, count);
    }

    private static double shape(int bins) {
        double covariance = bins + 2 * (bins - 1) * 4.0 / 9 + 2 * Math.max(0, bins - 2) / 36.0;
        return (double) bins * bins / covariance;
    }
}
