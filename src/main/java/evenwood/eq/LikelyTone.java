package evenwood.eq;

import evenwood.measure.ToneDifference;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;

/**
 * What a tone difference most likely is, given that bands were not heard equally surely and that neighbours are alike.
 *
 * <p>How: before hearing, what a chain does in two bands goes together the more, the nearer they are: {@value #USUAL_DB} dB each,
 * correlation 1/e over {@value #ALIKE_OCTAVES} octaves, a level common to all unknown. Hearing adds each band's own error. The mean
 * and covariance of what is then left (posterior) lets a band that rests on one note lean on its neighbours, and keeps a narrow bump
 * that was heard surely. Source: Gaussian process regression, e.g. Rasmussen and Williams 2006, ch. 2 (from memory, not re-read); the two
 * figures are our choice, and others from half to twice them do as well (SolverEvaluation, docs/accuracy.md).
 */
final class LikelyTone {
    private static final double USUAL_DB = 4;
    private static final double ALIKE_OCTAVES = 2;
    /** So wide that the common level counts for nothing. */
    private static final double UNKNOWN_LEVEL_DB = 100;
    private static final double LEAST_ERROR_DB = 0.05;

    private final double[] meanDb;
    private final RealMatrix covariance;

    LikelyTone(ToneDifference heard) {
        List<ToneDifference.Band> bands = heard.bands();
        int[] known = IntStream.range(0, bands.size()).filter(i -> bands.get(i).weight() > 0 && Double.isFinite(bands.get(i).uncertaintyDb())).toArray();
        RealMatrix before = before(bands);
        if (known.length == 0) {
            meanDb = bands.stream().mapToDouble(ToneDifference.Band::differenceDb).toArray();
            covariance = before;
            return;
        }
        int[] all = IntStream.range(0, bands.size()).toArray();
        RealMatrix among = before.getSubMatrix(known, known);
        for (int i = 0; i < known.length; i++) {
            double error = Math.max(LEAST_ERROR_DB, bands.get(known[i]).standardErrorDb());
            among.addToEntry(i, i, error * error);
        }
        DecompositionSolver solver = new CholeskyDecomposition(among).getSolver();
        RealMatrix across = before.getSubMatrix(all, known);
        meanDb = across.operate(solver.solve(new ArrayRealVector(IntStream.of(known).mapToDouble(i -> bands.get(i).differenceDb()).toArray()))).toArray();
        covariance = before.subtract(across.multiply(solver.solve(across.transpose())));
    }

    private static RealMatrix before(List<ToneDifference.Band> bands) {
        RealMatrix before = new Array2DRowRealMatrix(Math.max(1, bands.size()), Math.max(1, bands.size()));
        for (int i = 0; i < bands.size(); i++) {
            for (int j = 0; j < bands.size(); j++) {
                double octaves = Math.abs(bands.get(i).band().index() - bands.get(j).band().index()) / 3.0;
                before.setEntry(i, j, USUAL_DB * USUAL_DB * Math.exp(-octaves / ALIKE_OCTAVES) + UNKNOWN_LEVEL_DB * UNKNOWN_LEVEL_DB);
            }
        }
        return before;
    }

    /** Likeliest difference of each band. */
    double[] meanDb() {
        return meanDb;
    }

    /** How unsure that is, and how the errors hang together; a level common to all bands is unknown. */
    RealMatrix covariance() {
        return covariance;
    }
}
