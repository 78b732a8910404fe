package evenwood.judge;

/**
 * From evidence to probability: half of all takes are taken to be as they should be, a twelfth has each fault, of 3 to 12 dB.
 *
 * <p>Against an instrument's usual tone, one logistic curve a region, because sources differ by more than the bell curves of
 * {@link ToneEvidence} think. Source: logistic regression on takes of independent sources, each against a target made without it
 * (ToneFitting; the reliability table in docs/accuracy.md). Against another take on the same instrument the evidence is taken as
 * it is: it errs on the careful side (docs/accuracy.md).
 */
final class ToneCalibration {
    private ToneCalibration() { }

    static double probability(ToneComparison.Against against, ToneRegion region, double logOdds) {
        return against == ToneComparison.Against.TAKE ? curve(0, 1, logOdds) : withInstrument(region, logOdds);
    }

    private static double withInstrument(ToneRegion region, double logOdds) {
        return switch (region) {
            case BOOMY -> curve(-0.99, 0.58, logOdds);
            case BOXY -> curve(-0.61, 0.73, logOdds);
            case NASAL -> curve(0.05, 0.95, logOdds);
            case HARSH -> curve(3.84, 2.32, logOdds);
            case THIN -> curve(-0.79, 0.71, logOdds);
            case DULL -> curve(-0.14, 0.89, logOdds);
        };
    }

    private static double curve(double offset, double slope, double logOdds) {
        return 1 / (1 + Math.exp(-offset - slope * logOdds));
    }
}
