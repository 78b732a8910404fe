package evenwood.judge;

/**
 * How the uncertainties of neighbouring bands hang together: what is off in one band is usually off in the next as well, so
 * a region stands out only against its neighbours.
 *
 * @param sharedPart       part of each band's variance that fades with distance; the rest is the band's own
 * @param correlationBands over how many third octaves the shared part fades to 1/e
 * @param hardnessDb       standard deviation of the treble, 5 kHz against 1 kHz and below, from how hard was played
 * @param freedom          degrees of freedom of Student's distribution; +Infinity for the normal one
 */
public record ToneSpread(double sharedPart, double correlationBands, double hardnessDb, double freedom) {
    private static final double HARDNESS_BEGINS_HZ = 1000;
    private static final double HARDNESS_WHOLE_HZ = 5000;

    /**
     * One instrument and recording against the target made of others. Source: maximum likelihood over independent sets of
     * recordings, each held against a target made of the others (docs/targets.md). Some lie far off, so Student's distribution with
     * 5 degrees of freedom; tried from 4 to 10 it told most (docs/accuracy.md).
     */
    public static final ToneSpread OF_INSTRUMENTS = new ToneSpread(0.89, 12, 0, 5);

    /**
     * Two takes on the same instrument: errors of bands correlate by 0.1 at most on the tuning sources, but for the treble,
     * which moves by 0.75 dB more than the bands' uncertainties explain; rounded up (docs/accuracy.md).
     */
    public static final ToneSpread OF_TAKES = new ToneSpread(0, 1, 1, Double.POSITIVE_INFINITY);

    double correlation(int bandsApart) {
        double shared = sharedPart * Math.exp(-Math.abs(bandsApart) / correlationBands);
        return bandsApart == 0 ? 1 : shared;
    }

    /** How much of the hardness a frequency gets, 0 to 1. */
    static double hardness(double frequencyHz) {
        return Math.max(0, Math.min(1, Math.log(frequencyHz / HARDNESS_BEGINS_HZ) / Math.log(HARDNESS_WHOLE_HZ / HARDNESS_BEGINS_HZ)));
    }
}
