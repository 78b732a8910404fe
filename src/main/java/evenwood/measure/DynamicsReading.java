package evenwood.measure;

/**
 * How soft and how hard was played, told by the peaks of the notes.
 *
 * @param softDbfs  10 % of the notes peak lower; −Infinity while there are too few
 * @param usualDbfs the median; −Infinity while there are too few
 * @param hardDbfs  5 % of the notes peak higher; −Infinity while there are too few
 * @param noteCount how many notes it rests on
 */
public record DynamicsReading(double softDbfs, double usualDbfs, double hardDbfs, int noteCount) {
    /** Under eight notes a percentile is a single note's chance (our choice). */
    public static final int FEWEST_NOTES = 8;

    public boolean isKnown() {
        return noteCount >= FEWEST_NOTES;
    }

    /** From soft to hard; 0 while unknown. */
    public double rangeDb() {
        return isKnown() ? hardDbfs - softDbfs : 0;
    }
}
