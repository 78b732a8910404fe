package evenwood.measure;

/**
 * How likely a take is audibly distorted, from its {@link DistortionFeatures}.
 *
 * <p>How: logistic regression. Source: fitted by DistortionFitting (test scope) on the takes of TrainingTakes, which are
 * none of those it is evaluated on (docs/accuracy.md). Both classes weighed the same in the fit; the prior below is added.
 */
final class DistortionModel {
    /** Our choice: of ten takes that a player brings, one is distorted. A false alarm costs more trust than a late one. */
    private static final double PRIOR = 0.1;
    private static final double OFFSET = -2.7621;
    private static final double[] WEIGHTS = {
        0.3004, // widening-least
        0.9151, // widening-most
        -0.0215, // late-widening-least
        0.5029, // late-widening-most
        0.5517, // attack-widening-least
        0.9903, // attack-widening-most
        -1.5365, // crest-by-rms-least
        -0.0415, // crest-by-rms-most
        -1.9559, // crest-by-peak-least
        -0.9599, // crest-by-peak-most
        0.0188, // crowding-near-least
        -0.4587, // crowding-near-most
        -0.1698, // crowding-wide-least
        0.2717, // crowding-wide-most
        4.3065, // flat-least
        1.0245, // flat-most
        0.3425, // one-sidedness
    };

    private DistortionModel() { }

    /** 0 to 1. */
    static double probability(double[] features) {
        double sum = OFFSET + Math.log(PRIOR / (1 - PRIOR));
        for (int i = 0; i < WEIGHTS.length; i++) {
            sum += WEIGHTS[i] * features[i];
        }
        return 1 / (1 + Math.exp(-sum));
    }
}
