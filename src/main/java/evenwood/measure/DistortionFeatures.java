package evenwood.measure;

import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;

/**
 * The numbers from which {@link DistortionModel} tells distorted from clean playing; pure arithmetic.
 *
 * <p>How: each compares the hardest playing with quieter playing of the same take, so that instrument, player and tone
 * cancel: (1) tops grow wider against the stretch's own autocorrelation; (2) crest stops growing with the level (peak
 * against what is left of the note, with brightness as a second regressor, for bright attacks have high peaks); (3) peaks
 * crowd under a ceiling; (4) tops are flat; (5) one side is held back. Those taken of both sides enter as the smaller and
 * the larger of the two, so that polarity does not matter.
 */
final class DistortionFeatures {
    static final String[] NAMES = {
        "widening-least", "widening-most", "late-widening-least", "late-widening-most", "attack-widening-least",
        "attack-widening-most", "crest-by-rms-least", "crest-by-rms-most", "crest-by-peak-least", "crest-by-peak-most",
        "crowding-near-least", "crowding-near-most", "crowding-wide-least", "crowding-wide-most", "flat-least", "flat-most",
        "one-sidedness"};

    private static final int FEWEST_TOPS = 3;
    private static final double CREST_RANGE_DB = 12;
    private static final double CREST_BEND_DB = 5;
    private static final int FEWEST_STRETCHES = 10;
    private static final double RIDGE = 1e-6;

    private final TopTable table;
    private final HopHistory rows;
    private final double[] values = new double[NAMES.length];
    private int filled;

    private DistortionFeatures(TopTable table, HopHistory rows) {
        this.table = table;
        this.rows = rows;
    }

    static double[] of(TopTable table, HopHistory rows) {
        DistortionFeatures features = new DistortionFeatures(table, rows);
        features.fill();
        return features.values;
    }

    private void fill() {
        both(widening(true, TopTable.When.ANY, 2, 1, 6, 12), widening(false, TopTable.When.ANY, 2, 1, 6, 12));
        both(widening(true, TopTable.When.LATE, 2, 2, 6, 12), widening(false, TopTable.When.LATE, 2, 2, 6, 12));
        both(widening(true, TopTable.When.EARLY, 5, 1, 3, 6), widening(false, TopTable.When.EARLY, 5, 1, 3, 6));
        both(crestSlope(StretchHistory.UPPER_DBFS, StretchHistory.RMS_DBFS), crestSlope(StretchHistory.LOWER_DBFS, StretchHistory.RMS_DBFS));
        both(crestSlope(StretchHistory.UPPER_DBFS, StretchHistory.UPPER_DBFS), crestSlope(StretchHistory.LOWER_DBFS, StretchHistory.LOWER_DBFS));
        both(crowding(true, 10, 0.5), crowding(false, 10, 0.5));
        both(crowding(true, 2, 1), crowding(false, 2, 1));
        both(flatShare(true), flatShare(false));
        values[filled++] = oneSidedness();
    }

    private void both(double upper, double lower) {
        values[filled++] = Math.min(upper, lower);
        values[filled++] = Math.max(upper, lower);
    }

    /** Mean slope of quieter tops less that of the highest ones, in nepers of curvature. */
    private double widening(boolean upper, TopTable.When when, int strayTops, double topDb, double fromDb, double toDb) {
        double top = table.levelAboveAllBut(upper, strayTops);
        TopTable.Sums high = table.sums(upper, when, top - topDb, when == TopTable.When.ANY ? top : Double.POSITIVE_INFINITY);
        TopTable.Sums low = table.sums(upper, when, top - toDb, top - fromDb);
        return high.count() < FEWEST_TOPS || low.count() < FEWEST_TOPS ? 0 : clamp(low.slope() - high.slope(), 2);
    }

    /** How many tops stand within so many dB of the highest, against within six times as many. */
    private double crowding(boolean upper, int strayTops, double withinDb) {
        double top = table.levelAboveAllBut(upper, strayTops);
        double near = table.sums(upper, TopTable.When.ANY, top - withinDb, top).count();
        double wide = table.sums(upper, TopTable.When.ANY, top - 6 * withinDb, top).count();
        return Math.log((near + 1) / (wide + 1));
    }

    private double flatShare(boolean upper) {
        double top = table.levelAboveAllBut(upper, 2);
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY);
        return high.judged() < FEWEST_TOPS ? 0 : high.flatShare();
    }

    /** dB of crest factor per dB of level within 5 dB of the loudest stretches, with brightness held equal. */
    private double crestSlope(int peakColumn, int levelColumn) {
        double top = secondHighest(levelColumn);
        double brightness = 0;
        int count = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            if (rows.get(row, levelColumn) > top - CREST_RANGE_DB) {
                brightness += rows.get(row, StretchHistory.BRIGHTNESS_DB);
                count++;
            }
        }
        if (count < FEWEST_STRETCHES) {
            return 0;
        }
        double[][] normal = MatrixUtils.createRealIdentityMatrix(4).scalarMultiply(RIDGE).getData();
        double[] right = new double[4];
        double[] regressors = {1, 0, 0, 0};
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            if (rows.get(row, levelColumn) > top - CREST_RANGE_DB) {
                double x = Math.min(rows.get(row, levelColumn) - top, 1) + CREST_BEND_DB;
                regressors[1] = Math.min(x, 0);
                regressors[2] = Math.max(x, 0);
                regressors[3] = rows.get(row, StretchHistory.BRIGHTNESS_DB) - brightness / count;
                double crest = rows.get(row, peakColumn) - rows.get(row, StretchHistory.RMS_DBFS);
                addTo(normal, right, regressors, crest);
            }
        }
        RealVector solution = new LUDecomposition(MatrixUtils.createRealMatrix(normal)).getSolver().solve(MatrixUtils.createRealVector(right));
        return clamp(solution.getEntry(2), 2);
    }

    private static void addTo(double[][] normal, double[] right, double[] regressors, double value) {
        for (int i = 0; i < regressors.length; i++) {
            right[i] += regressors[i] * value;
            for (int j = 0; j < regressors.length; j++) {
                normal[i][j] += regressors[i] * regressors[j];
            }
        }
    }

    private double secondHighest(int column) {
        double highest = Double.NEGATIVE_INFINITY;
        double second = Double.NEGATIVE_INFINITY;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            double value = rows.get(row, column);
            if (value > highest) {
                second = highest;
                highest = value;
            } else if (value > second) {
                second = value;
            }
        }
        return second;
    }

    /** How much the balance of upper and lower peaks differs between the loudest and quieter stretches, dB. */
    private double oneSidedness() {
        double top = Math.max(secondHighest(StretchHistory.UPPER_DBFS), secondHighest(StretchHistory.LOWER_DBFS));
        double[] sum = new double[2];
        int[] count = new int[2];
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            double upper = rows.get(row, StretchHistory.UPPER_DBFS);
            double lower = rows.get(row, StretchHistory.LOWER_DBFS);
            double under = top - Math.max(upper, lower);
            int which = under < 3 ? 0 : under > 6 && under < 16 ? 1 : -1;
            if (which >= 0) {
                sum[which] += upper - lower;
                count[which]++;
            }
        }
        return count[0] == 0 || count[1] == 0 ? 0 : Math.min(6, Math.abs(sum[0] / count[0] - sum[1] / count[1]));
    }

    private static double clamp(double value, double limit) {
        return Math.max(-limit, Math.min(limit, value));
    }
}
