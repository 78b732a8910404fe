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
    private static final double OFFSET = -1.7575;
    private static final double[] WEIGHTS = {
        0.2554, // widening-least
        0.4624, // widening-most
        0.1029, // late-widening-least
        0.4012, // late-widening-most
        0.3195, // attack-widening-least
        0.5270, // attack-widening-most
        0.2347, // near-widening-least
        0.3141, // near-widening-most
        -0.2807, // crest-by-rms-least
        0.0086, // crest-by-rms-most
        -0.2262, // crest-by-rms-below-least
        0.6981, // crest-by-rms-below-most
        -0.4241, // crest-by-peak-least
        -0.0744, // crest-by-peak-most
        -0.1223, // crowding-near-least
        0.0439, // crowding-near-most
        0.0472, // crowding-wide-least
        0.1810, // crowding-wide-most
        -0.1036, // stretch-crowding-least
        0.0583, // stretch-crowding-most
        0.8293, // flat-least
        0.6766, // flat-most
        0.0696, // flat-excess-least
        0.1063, // flat-excess-most
        0.2546, // flat-growth-least
        0.7299, // flat-growth-most
        -7.7311, // ripple-trend-least
        -3.3009, // ripple-trend-most
        -0.0729, // ripple-clarity-least
        -0.0175, // ripple-clarity-most
        -1.4370, // ripple-step-least
        -1.4157, // ripple-step-most
        -0.1099, // peakedness-trend-least
        0.2382, // peakedness-trend-most
        -0.0111, // peakedness-clarity-least
        -0.0023, // peakedness-clarity-most
        0.3080, // peakedness-step-least
        -0.6190, // peakedness-step-most
        0.1591, // one-sidedness
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
