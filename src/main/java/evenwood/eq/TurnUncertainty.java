package evenwood.eq;

import evenwood.measure.ToneDifference;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;

/**
 * How surely each turn of a combination has its size, from how sure the bands are.
 *
 * <p>How: the effects, each scaled to 1 dB at its largest, are fitted to the difference by weighted least squares with the
 * level free; the bands' standard errors go through that fit. What is wrong about one band is wrong about its neighbours too:
 * correlation {@value #NEIGHBOUR_LIKENESS} to the next band and its powers beyond (our choice; notes and body resonances are
 * wider than a third octave). Source: propagation of covariance through linear least squares (any text on it).
 */
final class TurnUncertainty {
    private static final double NEIGHBOUR_LIKENESS = 0.5;
    private static final double RIDGE = 1e-9;

    private TurnUncertainty() { }

    /** Standard error in dB of each effect's largest value. */
    static double[] standardErrorsDb(List<double[]> effects, ToneDifference heard, ToneLoss loss) {
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
        RealMatrix covariance = gain.multiply(bandCovariance(heard, loss)).multiplyTransposed(gain);
        double[] errors = new double[k];
        for (int i = 0; i < k; i++) {
            errors[i] = Math.sqrt(Math.max(0, covariance.getEntry(i, i)));
        }
        return errors;
    }

    private static RealMatrix bandCovariance(ToneDifference heard, ToneLoss loss) {
        int n = loss.bands();
        RealMatrix covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                int apart = Math.abs(heard.bands().get(i).band().index() - heard.bands().get(j).band().index());
                covariance.setEntry(i, j, error(heard, loss, i) * error(heard, loss, j) * Math.pow(NEIGHBOUR_LIKENESS, apart));
            }
        }
        return covariance;
    }

    /** A band of which nothing is known has no weight and no say. */
    private static double error(ToneDifference heard, ToneLoss loss, int band) {
        return loss.weight(band) == 0 ? 0 : heard.bands().get(band).standardErrorDb();
    }
}
