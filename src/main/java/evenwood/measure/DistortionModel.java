package evenwood.measure;

import java.util.concurrent.CompletableFuture;

/**
 * How likely a take is audibly distorted, from its {@link DistortionFeatures}.
 *
 * <p>How: the log odds of the {@link DistortionForest}'s share, straightened by a line. Source: fitted by DistortionFitting
 * (test scope) on the takes of TrainingTakes, which are none of those it is evaluated on (docs/accuracy.md); the line on
 * what forests grown without a bank said of that bank's takes. Both classes weighed the same; the prior below is added.
 */
final class DistortionModel {
    /** Our choice: of ten takes that a player brings, one is distorted. A false alarm costs more trust than a late one. */
    private static final double PRIOR = 0.1;
    /** A share of none is not certainty. */
    private static final double SOFTENED = 0.01;
    private static final double SLOPE = 1.9578;
    private static final double OFFSET = -0.5488;
    private static final CompletableFuture<DistortionModel> SHIPPED = CompletableFuture.supplyAsync(() -> new DistortionModel(DistortionForest.shipped()));

    private final DistortionForest forest;

    private DistortionModel(DistortionForest forest) {
        this.forest = forest;
    }

    /** Read beside once somebody asks for it: it takes a sixth of a second, an open input waits for nobody, and the thread that hears touches no files. */
    static CompletableFuture<DistortionModel> shipped() {
        return SHIPPED;
    }

    /** 0 to 1. */
    double probability(double[] features) {
        double sum = OFFSET + SLOPE * logOdds(forest.share(features)) + Math.log(PRIOR / (1 - PRIOR));
        return 1 / (1 + Math.exp(-sum));
    }

    static double logOdds(double share) {
        return Math.log((share + SOFTENED) / (1 - share + SOFTENED));
    }
}
