package evenwood.measure;

import java.util.Arrays;

/**
 * What is remembered of the tops of half waves: sums over all tops that reached the same level, one row for each
 * 0.25 dB, apart for upper and lower tops and for those within an attack.
 *
 * <p>A fixed table, so that eight hours need no more room than a minute.
 * <p>Thread: one owner. Nothing here allocates but the constructor and {@link #sums}.
 */
final class TopTable {
    static final double ROW_DB = 0.25;
    /** Which tops: all, those of the first stretches of a note, or the others. */
    enum When { ANY, EARLY, LATE }

    private static final double LOWEST_DBFS = -66;
    private static final double HIGHEST_DBFS = 12;
    private static final int ROWS = (int) ((HIGHEST_DBFS - LOWEST_DBFS) / ROW_DB);
    private static final int COUNT = 0;
    private static final int SLOPE = 1;
    private static final int JUDGED = 2;
    private static final int FLAT = 3;
    private static final int PARTS = 4;
    private static final int COLUMNS = 2 * PARTS;

    private final double[][] sums = new double[2][ROWS * COLUMNS];

    /**
     * Sums over some rows.
     *
     * @param count  tops
     * @param slope  mean of their slope, 0 when there are none
     * @param judged those wide enough to tell flat from round
     * @param flat   those of them that were flat
     */
    record Sums(double count, double slope, double judged, double flat) {
        double flatShare() {
            return judged == 0 ? 0 : flat / judged;
        }
    }

    /** [audio thread] */
    void add(boolean upper, double dbfs, boolean early, double slope, boolean judged, boolean flat) {
        int row = (int) Math.floor((dbfs - LOWEST_DBFS) / ROW_DB);
        if (!(dbfs >= LOWEST_DBFS) || row >= ROWS) {
            return;
        }
        double[] table = sums[upper ? 0 : 1];
        int at = row * COLUMNS + (early ? PARTS : 0);
        table[at + COUNT]++;
        table[at + SLOPE] += slope;
        table[at + JUDGED] += judged ? 1 : 0;
        table[at + FLAT] += flat ? 1 : 0;
    }

    /** The highest level, as the upper edge of a row, above which there are not more than so many tops; −Infinity if none. */
    double levelAboveAllBut(boolean upper, int tops) {
        double seen = 0;
        for (int row = ROWS - 1; row >= 0; row--) {
            seen += sums[upper ? 0 : 1][row * COLUMNS + COUNT] + sums[upper ? 0 : 1][row * COLUMNS + PARTS + COUNT];
            if (seen > tops) {
                return LOWEST_DBFS + (row + 1) * ROW_DB;
            }
        }
        return Double.NEGATIVE_INFINITY;
    }

    /** What reached from {@code low} up to, not including, {@code high}, in dBFS. */
    Sums sums(boolean upper, When when, double low, double high) {
        int first = Math.max(0, row(low));
        int end = Math.min(ROWS, row(high));
        double[] total = new double[PARTS];
        for (int row = first; row < end; row++) {
            for (int part = 0; part < PARTS; part++) {
                double late = sums[upper ? 0 : 1][row * COLUMNS + part];
                double early = sums[upper ? 0 : 1][row * COLUMNS + PARTS + part];
                total[part] += (when == When.EARLY ? 0 : late) + (when == When.LATE ? 0 : early);
            }
        }
        return new Sums(total[COUNT], total[COUNT] == 0 ? 0 : total[SLOPE] / total[COUNT], total[JUDGED], total[FLAT]);
    }

    void reset() {
        Arrays.fill(sums[0], 0);
        Arrays.fill(sums[1], 0);
    }

    private static int row(double dbfs) {
        return (int) Math.round(Math.min(1e6, (dbfs - LOWEST_DBFS) / ROW_DB));
    }
}
