package evenwood.measure;

/**
 * One tone difference for all pairs of notes, each pair with a level of its own.
 *
 * <p>How: difference of pair p in band b = level(p) + d(b) + error; levels and d by turns, each a weighted mean, with the
 * weights 1/(1 + (error/4 dB)²) of a Cauchy distribution so that a wrongly heard note does little harm. Source: iteratively
 * reweighted least squares, e.g. Holland and Welsch 1977 (from memory, not re-read).
 */
final class PairFit {
    private static final double ERROR_SCALE_DB = 4;

    private final NotePairs pairs;
    private final int bands;

    PairFit(NotePairs pairs, int bands) {
        this.pairs = pairs;
        this.bands = bands;
    }

    /**
     * @param startDb      the difference to begin with
     * @param rounds       how often it is made better
     * @param leftOutSide  0 or 1: pairs with {@code leftOutMidi} on this side do not count
     */
    double[] differenceDb(double[] startDb, int rounds, int leftOutSide, int leftOutMidi) {
        double[] difference = startDb.clone();
        for (int round = 0; round < rounds; round++) {
            double[] sums = new double[bands];
            double[] weights = new double[bands];
            for (int pair = 0; pair < pairs.count(); pair++) {
                if (pairs.midi(pair, leftOutSide) != leftOutMidi) {
                    addPair(pairs.differenceDb(pair), pairs.weights(pair), difference, sums, weights);
                }
            }
            for (int band = 0; band < bands; band++) {
                difference[band] = weights[band] > 0 ? sums[band] / weights[band] : difference[band];
            }
        }
        return difference;
    }

    private void addPair(double[] heard, double[] weight, double[] difference, double[] sums, double[] weights) {
        double level = level(heard, weight, difference, level(heard, weight, difference, Double.NaN));
        for (int band = 0; band < bands; band++) {
            double w = weight[band] * trust(heard[band] - level - difference[band]);
            sums[band] += w * (heard[band] - level);
            weights[band] += w;
        }
    }

    /** The pair's own level; errors are seen from a first guess, or not at all when there is none. */
    private double level(double[] heard, double[] weight, double[] difference, double guess) {
        double sum = 0;
        double weights = 1e-12;
        for (int band = 0; band < bands; band++) {
            double left = heard[band] - difference[band];
            double w = Double.isNaN(guess) ? weight[band] : weight[band] * trust(left - guess);
            sum += w * left;
            weights += w;
        }
        return sum / weights;
    }

    private static double trust(double error) {
        return 1 / (1 + error * error / (ERROR_SCALE_DB * ERROR_SCALE_DB));
    }
}
