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
    private static final double OFFSET = -2.1640;
    private static final double[] WEIGHTS = {
        0.6393, // widening-least
        1.1013, // widening-most
        -0.1312, // late-widening-least
        0.5125, // late-widening-most
        -0.2584, // attack-widening-least
        0.9063, // attack-widening-most
        -0.7498, // crest-by-rms-least
        0.6212, // crest-by-rms-most
        -1.3926, // crest-by-peak-least
        -0.8119, // crest-by-peak-most
        -0.2782, // crowding-near-least
        0.1828, // crowding-near-most
        0.0747, // crowding-wide-least
        -0.0082, // crowding-wide-most
        3.0428, // flat-least
        0.2052, // flat-most
        0.3035, // one-sidedness
        0.4821, // near-widening-least
        0.0790, // near-widening-most
        0.2666, // flat-excess-least
        0.3337, // flat-excess-most
        -0.7143, // flat-growth-least
        1.3122, // flat-growth-most
        -0.2028, // stretch-crowding-least
        0.2805, // stretch-crowding-most
        -1.5138, // crest-by-rms-below-least
        2.3272, // crest-by-rms-below-most
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
