package evenwood.measure;

/**
 * How likely a growing line of the spectrum is a howl and no note: six features, weighed against each other.
 *
 * <p>Out: natural logarithm of the odds. How: a logistic regression on what tells growing lines in simulated feedback from
 * those in clean and sub-threshold playing; HowlOddsFit makes such weights, RingingEvaluation tries them on other loops and
 * other takes. Features after van Waterschoot and Moonen, JAES 58(11), 2010: persistence (hops, rise), slope deviation
 * (stray), peak to average (below all), peak to harmonic (partner). Steadiness of frequency is ours: a string's pitch moves,
 * a loop's does not.
 * <p>Thread: one owner; nothing here allocates but the constructor.
 */
final class HowlOdds {
    static final int FEATURES = 6;
    /** Odds of 20 to 1. */
    static final double ENOUGH = 3;
    static final double NO_PARTNER_DB = -60;

    /**
     * Of hops, rise, stray, below all, wander, partner; the constant last. Made on growing peaks of all kinds; HowlOddsFit, which
     * sees risen ones only, makes 3.549, 1.278, −2.263, −0.074, −1.297, −0.034, −21.436: in RingingEvaluation a twelfth more
     * howls in half a second, but one clean take in 76 called a howl, so they are not used.
     */
    private static final double[] WEIGHTS = {3.36, 1.47, -2.06, -0.067, -1.30, -0.028, -21.58};
    private static final int PARTNER = 5;
    private static final double SMALLEST_STRAY_SHARE = 0.005;
    private static final double SMALLEST_WANDER_BINS = 0.003;

    private final double[] features = new double[FEATURES];

    /**
     * @param hops       length of the growth, in hops of 42.7 ms
     * @param riseDb     how much it grew
     * @param strayDb    distance of the levels from a straight line
     * @param belowAllDb how far the line is under all sound together
     * @param wanderBins standard deviation of its frequency over the newer half
     */
    void describe(double hops, double riseDb, double strayDb, double belowAllDb, double wanderBins) {
        features[0] = Math.log(hops);
        features[1] = Math.log(riseDb);
        features[2] = Math.log(strayDb / riseDb + SMALLEST_STRAY_SHARE);
        features[3] = belowAllDb;
        features[4] = Math.log(wanderBins + SMALLEST_WANDER_BINS);
        features[PARTNER] = NO_PARTNER_DB;
    }

    /** @param partnerDb loudest other line at a simple ratio that grew along, against this one; at least −60 */
    void describePartner(double partnerDb) {
        features[PARTNER] = partnerDb;
    }

    boolean areEnough() {
        double sum = WEIGHTS[FEATURES];
        for (int i = 0; i < FEATURES; i++) {
            sum += WEIGHTS[i] * features[i];
        }
        return sum >= ENOUGH;
    }

    /** What was described last; not to be kept. */
    double[] features() {
        return features;
    }
}
