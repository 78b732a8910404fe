package evenwood.measure;

/**
 * How likely a growing line of the spectrum is a howl and no note: six features, weighed against each other.
 *
 * <p>How: natural logarithm of the odds, a logistic regression on what distinguishes growing lines in simulated feedback
 * from those in clean and sub-threshold playing (RingingEvaluation, with seeds that no test uses). Features after van
 * Waterschoot and Moonen, JAES 58(11), 2010: persistence (hops, rise), slope deviation (stray), peak to average
 * (below all), peak to harmonic (partner). Steadiness of frequency is ours: a string's pitch moves, a loop's does not.
 * <p>Thread: any.
 */
final class HowlOdds {
    /** Odds of 20 to 1. */
    static final double ENOUGH = 3;

    private static final double CONSTANT = -21.58;
    private static final double PER_LN_HOPS = 3.36;
    private static final double PER_LN_RISE = 1.47;
    private static final double PER_LN_STRAY = -2.06;
    private static final double PER_DB_BELOW_ALL = -0.067;
    private static final double PER_LN_WANDER = -1.30;
    private static final double PER_DB_OF_PARTNER = -0.028;

    private HowlOdds() { }

    /**
     * @param hops        length of the growth, in hops of 42.7 ms
     * @param riseDb      how much it grew
     * @param strayDb     distance of the levels from a straight line
     * @param belowAllDb  how far the line is under all sound together
     * @param wanderBins  standard deviation of its frequency over the newer half
     * @param partnerDb   loudest other line at a simple ratio that grew along, against this one; −60 where there is none
     */
    static double ln(double hops, double riseDb, double strayDb, double belowAllDb, double wanderBins, double partnerDb) {
        return CONSTANT + PER_LN_HOPS * Math.log(hops) + PER_LN_RISE * Math.log(riseDb)
            + PER_LN_STRAY * Math.log(strayDb / riseDb + 0.005) + PER_DB_BELOW_ALL * belowAllDb
            + PER_LN_WANDER * Math.log(wanderBins + 0.003) + partnerTerm(partnerDb);
    }

    /** The part of the sum that tells of partners. */
    static double partnerTerm(double partnerDb) {
        return PER_DB_OF_PARTNER * partnerDb;
    }
}
