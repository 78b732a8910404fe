package evenwood.measure;

/**
 * Peaks of either side, level, brightness and what lies near the tops of each half hop, for the distortion detectors.
 *
 * <p>In: stretches of half a hop. Out: rows of a {@link HopHistory}, in dB, offset removed.
 * <p>Thread: one owner. Nothing here allocates but the constructor.
 */
final class StretchHistory {
    static final int UPPER_DBFS = 0;
    static final int LOWER_DBFS = 1;
    static final int RMS_DBFS = 2;
    /** Mean square of the first difference over the mean square: a spectrum's middle, in dB. */
    static final int BRIGHTNESS_DB = 3;
    /** {@link TopMoments}' numbers; −Infinity where they were not told. */
    static final int UPPER_RIPPLE = 4;
    static final int LOWER_RIPPLE = 5;
    static final int FINE_DB = 6;
    static final int MIDDLE_DB = 7;
    static final int UPPER_PEAKEDNESS = 8;
    static final int LOWER_PEAKEDNESS = 9;
    private static final int COLUMNS = 10;
    /** With stretches 17 dB under the loudest so far nobody compares. */
    private static final double MOMENTS_ABOVE = 0.02;
    private static final double FLOOR = 1e-6;
    /** An attack is a stretch that is 3 dB louder than the two before it. */
    private static final double RISE = 1.41;
    /** A note counts as early for the two stretches after its attack too. */
    private static final int EARLY_STRETCHES = 2;

    private final HopHistory rows;
    private final TopMoments moments;
    private double loudest;
    private double sum;
    private long frames;
    private float before;
    private double peakBefore;
    private double peakBeforeThat;
    private int sinceAttack;
    private double peak;
    private double newestSum;
    private double newestSquares;

    StretchHistory(int capacity, double sampleRateHz) {
        moments = new TopMoments(sampleRateHz);
        rows = new HopHistory(capacity, COLUMNS);
        reset();
    }

    /** [audio thread] */
    void accept(float[] stretch) {
        float highest = stretch[0];
        float lowest = stretch[0];
        double squares = 0;
        double moreSquares = 0;
        double differences = 0;
        double moreDifferences = 0;
        double evenSum = 0;
        double oddSum = 0;
        float last = before;
        // Two of each: one sum alone waits for its own last addition at every sample.
        for (int i = 0; i + 1 < stretch.length; i += 2) {
            float x = stretch[i];
            float next = stretch[i + 1];
            float step = x - last;
            float nextStep = next - x;
            evenSum += x;
            oddSum += next;
            squares += x * x;
            moreSquares += next * next;
            differences += step * step;
            moreDifferences += nextStep * nextStep;
            highest = Math.max(highest, Math.max(x, next));
            lowest = Math.min(lowest, Math.min(x, next));
            last = next;
        }
        squares += moreSquares;
        differences += moreDifferences;
        double stretchSum = evenSum + oddSum;
        before = last;
        newestSum = stretchSum;
        newestSquares = squares;
        sum += stretchSum;
        frames += stretch.length;
        double offset = sum / frames;
        double meanSquare = Math.max(FLOOR * FLOOR, squares / stretch.length - offset * (2 * stretchSum / stretch.length - offset));
        peak = Math.max(highest, -lowest);
        noteAttack();
        long row = rows.append();
        rows.set(row, UPPER_DBFS, (float) (20 * Math.log10(Math.max(FLOOR, highest - offset))));
        rows.set(row, LOWER_DBFS, (float) (20 * Math.log10(Math.max(FLOOR, offset - lowest))));
        rows.set(row, RMS_DBFS, (float) (10 * Math.log10(meanSquare)));
        rows.set(row, BRIGHTNESS_DB, (float) (10 * Math.log10(Math.max(FLOOR * FLOOR, differences / stretch.length) / meanSquare)));
        setMoments(row, stretch, offset, meanSquare);
    }

    /** Largest magnitude of the newest stretch. */
    double peak() {
        return peak;
    }

    /** Sum of the newest stretch's samples. */
    double newestSum() {
        return newestSum;
    }

    /** Sum of their squares. */
    double newestSquares() {
        return newestSquares;
    }

    boolean early() {
        return sinceAttack <= EARLY_STRETCHES;
    }

    HopHistory rows() {
        return rows;
    }

    void reset() {
        rows.reset();
        loudest = 0;
        sum = 0;
        frames = 0;
        before = 0;
        peakBefore = 0;
        peakBeforeThat = 0;
        sinceAttack = EARLY_STRETCHES + 1;
    }

    private void setMoments(long row, float[] stretch, double offset, double meanSquare) {
        loudest = Math.max(loudest, meanSquare);
        if (meanSquare > loudest * MOMENTS_ABOVE) {
            moments.accept(stretch, offset);
            rows.set(row, UPPER_RIPPLE, (float) moments.ripple(true));
            rows.set(row, LOWER_RIPPLE, (float) moments.ripple(false));
            rows.set(row, FINE_DB, (float) moments.fineDb());
            rows.set(row, MIDDLE_DB, (float) moments.middleDb());
            rows.set(row, UPPER_PEAKEDNESS, (float) moments.peakedness(true));
            rows.set(row, LOWER_PEAKEDNESS, (float) moments.peakedness(false));
        } else {
            for (int column = UPPER_RIPPLE; column < COLUMNS; column++) {
                rows.set(row, column, Float.NEGATIVE_INFINITY);
            }
        }
    }

    private void noteAttack() {
        boolean attack = peak > RISE * Math.max(peakBefore, peakBeforeThat);
        sinceAttack = attack ? 0 : Math.min(sinceAttack + 1, EARLY_STRETCHES + 1);
        peakBeforeThat = peakBefore;
        peakBefore = peak;
    }
}
