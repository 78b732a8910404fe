package evenwood.eq;

import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * How surely each turn of a combination has its size, from how sure the bands are.
 *
 * <p>How: the effects, each scaled to 1 dB at its largest, are fitted to the difference by weighted least squares with the
 * level free; what is not known of the bands ({@link LikelyTone}) goes through that fit. Source: propagation of covariance through linear least squares (any text on it).
 */
final class TurnUncertainty {
    private static final double RIDGE = 1e-9;

    private TurnUncertainty() { }

    /** Standard error in dB of each effect's largest value. */
    static double[] standardErrorsDb(List<double[]> effects, ToneLoss loss) {
        int n = loss.bands();
        int k = effects.size();
        if (k == 0) {
            return new double[0];
        }
        RealMatrix shapes = new Array2DRowRealMatrix(n, k + 1);
        for (int column = 0; column < k; column++) {
            double size = Math.max(1e-9, Effort.of(effects.get(column), loss).sizeDb());
            for (int row = 0; row < n; row++) {
                shapes.setEntry(row, column, effects.get(column)[row] / size);
            }
        }
        RealMatrix weighted = new Array2DRowRealMatrix(n, k + 1);
        for (int row = 0; row < n; row++) {
            shapes.setEntry(row, k, 1);
            for (int column = 0; column <= k; column++) {
                weighted.setEntry(row, column, loss.weight(row) * shapes.getEntry(row, column));
            }
        }
        RealMatrix normal = weighted.transposeMultiply(shapes);
        for (int i = 0; i <= k; i++) {
            normal.addToEntry(i, i, RIDGE);
        }
        RealMatrix gain = new LUDecomposition(normal, 0).getSolver().getInverse().multiplyTransposed(weighted);
        RealMatrix covariance = gain.multiply(loss.likely().covariance()).multiplyTransposed(gain);
        double[] errors = new double[k];
        for (int i = 0; i < k; i++) {
            errors[i] = Math.sqrt(Math.max(0, covariance.getEntry(i, i)));
        }
        return errors;
    }
}
