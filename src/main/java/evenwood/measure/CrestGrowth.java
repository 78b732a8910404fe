package evenwood.measure;

import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealVector;

/**
 * How peaks grow with what is left of the note: in a linear chain they move together, above an onset peaks stop.
 *
 * <p>How: least squares over the stretches within 12 dB of the loudest, crest factor on level, with a bend 5 dB under the
 * loudest and with brightness as one more regressor, for bright attacks have high peaks.
 *
 * @param aboveBend dB of crest per dB of level among the loudest, −2 to 2; 0 with too few stretches
 * @param belowBend the same among the quieter ones
 */
record CrestGrowth(double aboveBend, double belowBend) {
    private static final double RANGE_DB = 12;
    private static final double BEND_DB = 5;
    private static final int FEWEST_STRETCHES = 10;
    private static final double RIDGE = 1e-6;
    private static final double LIMIT = 2;

    static CrestGrowth of(HopHistory rows, int peakColumn, int levelColumn) {
        double top = secondHighest(rows, levelColumn);
        double brightness = 0;
        int count = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            if (rows.get(row, levelColumn) > top - RANGE_DB) {
                brightness += rows.get(row, StretchHistory.BRIGHTNESS_DB);
                count++;
            }
        }
        return count < FEWEST_STRETCHES ? new CrestGrowth(0, 0) : fit(rows, peakColumn, levelColumn, top, brightness / count);
    }

    private static CrestGrowth fit(HopHistory rows, int peakColumn, int levelColumn, double top, double brightness) {
        double[][] normal = MatrixUtils.createRealIdentityMatrix(4).scalarMultiply(RIDGE).getData();
        double[] right = new double[4];
        double[] regressors = {1, 0, 0, 0};
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            if (rows.get(row, levelColumn) > top - RANGE_DB) {
                double x = Math.min(rows.get(row, levelColumn) - top, 1) + BEND_DB;
                regressors[1] = Math.min(x, 0);
                regressors[2] = Math.max(x, 0);
                regressors[3] = rows.get(row, StretchHistory.BRIGHTNESS_DB) - brightness;
                add(normal, right, regressors, rows.get(row, peakColumn) - rows.get(row, StretchHistory.RMS_DBFS));
            }
        }
        RealVector solution = new LUDecomposition(MatrixUtils.createRealMatrix(normal)).getSolver().solve(MatrixUtils.createRealVector(right));
        return new CrestGrowth(limited(solution.getEntry(2)), limited(solution.getEntry(1)));
    }

    private static void add(double[][] normal, double[] right, double[] regressors, double value) {
        for (int i = 0; i < regressors.length; i++) {
            right[i] += regressors[i] * value;
            for (int j = 0; j < regressors.length; j++) {
                normal[i][j] += regressors[i] * regressors[j];
            }
        }
    }

    /** The highest may be a stray. */
    static double secondHighest(HopHistory rows, int column) {
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

    private static double limited(double slope) {
        return Math.max(-LIMIT, Math.min(LIMIT, slope));
    }
}
