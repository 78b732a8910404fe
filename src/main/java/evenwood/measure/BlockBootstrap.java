package evenwood.measure;

import java.util.SplittableRandom;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.util.KthSelector;

/**
 * How far the average of something uneven might be off: draws blocks of the take again and again, with replacement.
 *
 * <p>In: per block the sums of each column. Out: the 95 % range of any figure of the redrawn means.
 * <p>How: {@value #RESAMPLES} draws with a fixed seed, so the same take gives the same answer; percentiles moved outward
 * by Student's t and √(n/(n−1)), because plain percentiles of few blocks are too narrow. Source: block bootstrap of
 * Künsch 1989; expanded percentile interval of Hesterberg, The American Statistician 69(4), 2015 (from memory, not
 * re-read); coverage measured in LongTermSpectrumCoverageReferenceTest.
 */
final class BlockBootstrap {
    static final int RESAMPLES = 1000;
    private static final double CONFIDENCE = 0.95;
    private static final long SEED = 61260;

    private final double[][] means;

    /** @param blockMeans one row a block, all blocks of the same length */
    BlockBootstrap(double[][] blockMeans) {
        int blocks = blockMeans.length;
        int columns = blockMeans[0].length;
        SplittableRandom random = new SplittableRandom(SEED);
        means = new double[RESAMPLES][columns];
        for (double[] mean : means) {
            for (int draw = 0; draw < blocks; draw++) {
                add(mean, blockMeans[random.nextInt(blocks)]);
            }
            for (int column = 0; column < columns; column++) {
                mean[column] /= blocks;
            }
        }
    }

    /** The redrawn means, one row a draw; may be changed in place. */
    double[][] means() {
        return means;
    }

    /** Half the width in dB of the 95 % range of redrawn powers; +Infinity where silence is in the range. */
    static double halfWidthDb(double[] powers, double outsideShare) {
        int outside = (int) Math.round(outsideShare * powers.length);
        KthSelector selector = new KthSelector();
        double high = selector.select(powers, null, powers.length - 1 - outside);
        double low = selector.select(powers, null, outside);
        double halfWidthDb = 5 * Math.log10(high / low);
        return Double.isNaN(halfWidthDb) ? Double.POSITIVE_INFINITY : halfWidthDb;
    }

    /** Share of the draws to leave out at each end: 2.5 % for many blocks, 0.9 % for ten. */
    static double outsideShare(int blocks) {
        double t = new TDistribution(blocks - 1).inverseCumulativeProbability((1 + CONFIDENCE) / 2);
        return new NormalDistribution().cumulativeProbability(-t * Math.sqrt(blocks / (blocks - 1.0)));
    }

    /**
     * What the widths must be multiplied by because neighbouring blocks are alike (a note or a phrase reaches over the
     * edge): √(1 + 2r), r the correlation of neighbours, averaged over the columns; never below 1. Source: variance of a
     * mean of correlated values, first lag only (Newey and West 1987); small-sample bias −1/n of r taken off.
     *
     * @param residuals one row a block, each column with mean 0
     */
    static double likenessFactor(double[][] residuals) {
        int blocks = residuals.length;
        double sum = 0;
        int columns = 0;
        for (int column = 0; column < residuals[0].length; column++) {
            double power = 0;
            double neighbours = 0;
            for (int block = 0; block < blocks; block++) {
                power += residuals[block][column] * residuals[block][column];
                neighbours += block == 0 ? 0 : residuals[block][column] * residuals[block - 1][column];
            }
            if (power > 0) {
                sum += neighbours / power;
                columns++;
            }
        }
        return columns == 0 ? 1 : Math.sqrt(1 + 2 * Math.max(0, sum / columns + 1.0 / blocks));
    }

    private static void add(double[] sums, double[] row) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += row[i];
        }
    }
}
