package evenwood.judge;

/**
 * From evidence to probability: one logistic curve a region.
 *
 * <p>Source: fitted by ToneFitting on takes of all sources, half of them clean, a twelfth with each fault of 3 to 12 dB;
 * reliability on sources left out in docs/accuracy.md.
 */
final class ToneCalibration {
    private ToneCalibration() { }

    static double probability(ToneRegion region, double logOdds) {
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
