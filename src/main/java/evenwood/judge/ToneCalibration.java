package evenwood.judge;

/**
 * From evidence to probability: one logistic curve a region.
 *
 * <p>Source: set by hand, rounded, so that "slight" begins about where 2 % of clean takes of other sources are named and
 * "clear" well above (432 takes of 52 voices, faults added to the measured bands). ToneFitting fits the curves anew to
 * takes with faults in the sound; until its figures stand here the probabilities are a ranking more than a promise.
 */
final class ToneCalibration {
    private ToneCalibration() { }

    static double probability(ToneComparison.Against against, ToneRegion region, double logOdds) {
        return against == ToneComparison.Against.TAKE ? curve(0, 1, logOdds) : withInstrument(region, logOdds);
    }

    private static double withInstrument(ToneRegion region, double logOdds) {
        return switch (region) {
            case BOOMY -> curve(-1.5, 1, logOdds);
            case BOXY -> curve(-1, 1.2, logOdds);
            case NASAL -> curve(0.5, 1.2, logOdds);
            case HARSH -> curve(1, 1.2, logOdds);
            case THIN -> curve(0, 1, logOdds);
            case DULL -> curve(0.5, 1, logOdds);
        };
    }

    private static double curve(double offset, double slope, double logOdds) {
        return 1 / (1 + Math.exp(-offset - slope * logOdds));
    }
}
