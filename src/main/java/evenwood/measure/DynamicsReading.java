package evenwood.measure;

/**
 * How soft and how hard was played, told by the peaks of the {@link Strokes}.
 *
 * @param softDbfs  10 % of the playing peaks lower; −Infinity while there are too few notes
 * @param usualDbfs the median; −Infinity while there are too few
 * @param hardDbfs  5 % of the playing peaks higher; −Infinity while there are too few
 * @param noteCount how many notes it rests on
 */
public record DynamicsReading(double softDbfs, double usualDbfs, double hardDbfs, int noteCount) {
    /** Under eight notes a percentile is a single note's chance (our choice). */
    public static final int FEWEST_NOTES = 8;

    /** Our choice: one stroke in twenty may be a slip. */
    private static final double HARD_SHARE = 0.95;
    private static final double SOFT_SHARE = 0.10;
    private static final double USUAL_SHARE = 0.50;

    static DynamicsReading of(WeightedQuantiles peaksDbfs, int noteCount) {
        return noteCount < FEWEST_NOTES || !peaksDbfs.areKnown() ? unknown(noteCount)
            : new DynamicsReading(peaksDbfs.at(SOFT_SHARE), peaksDbfs.at(USUAL_SHARE), peaksDbfs.at(HARD_SHARE), noteCount);
    }

    /** Of too few notes. */
    public static DynamicsReading unknown(int noteCount) {
        return new DynamicsReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, noteCount);
    }

    public boolean isKnown() {
        return noteCount >= FEWEST_NOTES && usualDbfs > Double.NEGATIVE_INFINITY;
    }

    /** From soft to hard; 0 while unknown. */
    public double rangeDb() {
        return isKnown() ? hardDbfs - softDbfs : 0;
    }
}
