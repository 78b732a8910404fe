package evenwood.eq;

import evenwood.measure.ThirdOctave;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.linear.ArrayRealVector;

/**
 * Filters that follow a curve given band by band: a shelf at either end and a peak on every band between.
 *
 * <p>How: the response of a peak in dB is nearly proportional to its gain, so the gains are a linear least-squares problem,
 * solved again around the last answer. Source: interaction matrix with iteration, Välimäki and Liski, IEEE SPL 24(2), 2017
 * (reference §6.3).
 * <p>Limits: the curve is held within ±{@value #MOST_DB} dB (CurveFitTest: 0.3 dB on smooth curves).
 */
final class CurveFit {
    static final double MOST_DB = 24;
    private static final int ROUNDS = 4;
    private static final double RIDGE = 1e-3;
    /** A third octave is 4.32; lower, so that neighbours meet without dips. Our choice, from the fit's error. */
    private static final double Q = 3.2;
    private static final double PROBE_DB = 1;

    private CurveFit() { }

    /** @param curveDb one value a band of the response */
    static EqChain chain(double[] curveDb, BandResponse response) {
        double[] wanted = Arrays.stream(curveDb).map(db -> Math.max(-MOST_DB, Math.min(MOST_DB, db))).toArray();
        if (Arrays.stream(wanted).allMatch(db -> Math.abs(db) < 1e-9)) {
            return EqChain.FLAT;
        }
        double[] gains = new double[wanted.length];
        for (int round = 0; round < ROUNDS; round++) {
            step(gains, wanted, response);
        }
        return new EqChain(0, filters(gains, response.bands()));
    }

    private static void step(double[] gains, double[] wanted, BandResponse response) {
        int n = gains.length;
        double[] now = response.db(new EqChain(0, filters(gains, response.bands())));
        RealMatrix slopes = new Array2DRowRealMatrix(n, n);
        for (int column = 0; column < n; column++) {
            double[] moved = response.db(filter(column, gains[column] + PROBE_DB, response.bands()));
            double[] here = response.db(filter(column, gains[column], response.bands()));
            for (int row = 0; row < n; row++) {
                slopes.setEntry(row, column, (moved[row] - here[row]) / PROBE_DB);
            }
        }
        RealVector missing = new ArrayRealVector(wanted).subtract(new ArrayRealVector(now));
        RealMatrix normal = slopes.transposeMultiply(slopes);
        for (int i = 0; i < n; i++) {
            normal.addToEntry(i, i, RIDGE);
        }
        RealVector change = new CholeskyDecomposition(normal, 1e-9, 1e-12).getSolver().solve(slopes.preMultiply(missing));
        for (int i = 0; i < n; i++) {
            gains[i] += change.getEntry(i);
        }
    }

    private static List<EqFilter> filters(double[] gains, List<ThirdOctave> bands) {
        List<EqFilter> filters = new ArrayList<>();
        for (int i = 0; i < gains.length; i++) {
            if (gains[i] != 0) {
                filters.add(filter(i, gains[i], bands));
            }
        }
        return filters;
    }

    private static EqFilter filter(int i, double gainDb, List<ThirdOctave> bands) {
        if (i == 0) {
            return EqFilter.lowShelf(bands.get(0).upperHz(), EqFilter.BUTTERWORTH_Q, gainDb);
        }
        return i == bands.size() - 1 ? EqFilter.highShelf(bands.get(i).lowerHz(), EqFilter.BUTTERWORTH_Q, gainDb)
            : EqFilter.peak(bands.get(i).centreHz(), Q, gainDb);
    }
}
