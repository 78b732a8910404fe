package evenwood.judge;

/**
 * How the uncertainties of neighbouring bands hang together: what is off in one band is usually off in the next as well, so
 * a region stands out only against its neighbours.
 *
 * @param sharedPart       part of each band's variance that fades with distance; the rest is the band's own
 * @param correlationBands over how many third octaves the shared part fades to 1/e
 */
public record ToneSpread(double sharedPart, double correlationBands) {
    /**
     * One instrument and recording against the target made of others. Source: maximum likelihood over independent sets of
     * recordings, each held against a target made of the others (docs/targets.md).
     */
    public static final ToneSpread OF_INSTRUMENTS = new ToneSpread(0.89, 12);

    /** Two takes on the same instrument: errors of bands correlate by 0.1 at most on the tuning sources (docs/accuracy.md). */
    public static final ToneSpread OF_TAKES = new ToneSpread(0, 1);

    double correlation(int bandsApart) {
        double shared = sharedPart * Math.exp(-Math.abs(bandsApart) / correlationBands);
        return bandsApart == 0 ? 1 : shared;
    }
}
