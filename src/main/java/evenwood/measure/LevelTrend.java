package evenwood.measure;

import java.util.function.LongToDoubleFunction;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How a number told for each stretch changes with the stretch's level, among the loudest and below them: in a linear chain
 * a wave's shape does not know its level, above an onset it does.
 *
 * <p>How: least squares over the stretches within a range of the loudest, with a bend some dB under it, and with what tells
 * the sound's colour as further regressors, for hard playing is brighter.
 *
 * @param aboveBend change per dB of level among the loudest, −2 to 2; 0 with too few stretches
 * @param belowBend the same among the quieter ones
 * @param clarity   {@code aboveBend} over its standard error, −15 to 15
 */
record LevelTrend(double aboveBend, double belowBend, double clarity) {
    private static final int FEWEST_STRETCHES = 10;
    private static final double RIDGE = 1e-6;
    private static final double LIMIT = 2;
    private static final double CLARITY_LIMIT = 15;
    private static final int SLOPES = 3;
    private static final double LOUD_DB = 2.5;
    private static final double QUIET_DB = 5;
    private static final double QUIETEST_DB = 12;
    private static final int FEWEST_LOUD = 2;
    private static final int FEWEST_QUIET = 4;
    private static final double SMALLEST_ERROR = 1e-9;

    /** @param value told for a row of {@code rows}  @param colours columns of the further regressors */
    static LevelTrend of(HopHistory rows, LongToDoubleFunction value, int levelColumn, double rangeDb, double bendDb, int... colours) {
        double top = secondHighest(rows, levelColumn);
        double[] mean = new double[colours.length];
        int count = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            if (rows.get(row, levelColumn) > top - rangeDb && Double.isFinite(value.applyAsDouble(row))) {
                for (int i = 0; i < mean.length; i++) {
                    mean[i] += rows.get(row, colours[i]);
                }
                count++;
            }
        }
        if (count < FEWEST_STRETCHES) {
            return new LevelTrend(0, 0, 0);
        }
        for (int i = 0; i < mean.length; i++) {
            mean[i] /= count;
        }
        return fit(rows, value, levelColumn, top - rangeDb, top, bendDb, colours, mean, count);
    }

    private static LevelTrend fit(HopHistory rows, LongToDoubleFunction value, int levelColumn, double lowest, double top, double bendDb,
                                  int[] colours, double[] mean, int count) {
        double[][] normal = MatrixUtils.createRealIdentityMatrix(SLOPES + colours.length).scalarMultiply(RIDGE).getData();
        double[] right = new double[normal.length];
        double[] regressors = new double[normal.length];
        regressors[0] = 1;
        double squares = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            double y = rows.get(row, levelColumn) > lowest ? value.applyAsDouble(row) : Double.NaN;
            if (Double.isFinite(y)) {
                double x = Math.min(rows.get(row, levelColumn) - top, 1) + bendDb;
                regressors[1] = Math.min(x, 0);
                regressors[2] = Math.max(x, 0);
                for (int i = 0; i < colours.length; i++) {
                    regressors[SLOPES + i] = rows.get(row, colours[i]) - mean[i];
                }
                add(normal, right, regressors, y);
                squares += y * y;
            }
        }
        RealMatrix inverse = new LUDecomposition(MatrixUtils.createRealMatrix(normal)).getSolver().getInverse();
        RealVector solution = inverse.operate(MatrixUtils.createRealVector(right));
        double residual = Math.max(0, squares - solution.dotProduct(MatrixUtils.createRealVector(right)));
        double error = Math.sqrt(residual / Math.max(1, count - normal.length) * Math.max(0, inverse.getEntry(2, 2))) + SMALLEST_ERROR;
        return new LevelTrend(limited(solution.getEntry(2), LIMIT), limited(solution.getEntry(1), LIMIT),
            limited(solution.getEntry(2) / error, CLARITY_LIMIT));
    }

    private static void add(double[][] normal, double[] right, double[] regressors, double value) {
        for (int i = 0; i < regressors.length; i++) {
            right[i] += regressors[i] * value;
            for (int j = 0; j < regressors.length; j++) {
                normal[i][j] += regressors[i] * regressors[j];
            }
        }
    }

    /** Mean among the loudest less mean among quieter ones; 0 with too few of either. */
    static double stepAtTheTop(HopHistory rows, LongToDoubleFunction value, int levelColumn) {
        double top = secondHighest(rows, levelColumn);
        double loud = 0;
        double quiet = 0;
        int loudCount = 0;
        int quietCount = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            double under = top - rows.get(row, levelColumn);
            double y = under < QUIETEST_DB ? value.applyAsDouble(row) : Double.NaN;
            if (Double.isFinite(y) && under < LOUD_DB) {
                loud += y;
                loudCount++;
            } else if (Double.isFinite(y) && under > QUIET_DB) {
                quiet += y;
                quietCount++;
            }
        }
        return loudCount < FEWEST_LOUD || quietCount < FEWEST_QUIET ? 0 : loud / loudCount - quiet / quietCount;
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

    private static double limited(double value, double limit) {
        return Math.max(-limit, Math.min(limit, value));
    }
}
