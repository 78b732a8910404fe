package evenwood.eq;

import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * The real taper of a gain or volume, from how much louder playing came.
 *
 * <p>How: linear least squares for the decibels at each position, the nominal taper as a soft prior.
 */
final class LevelFit {
    /** Tapers of volume controls differ by that much halfway; common practice. */
    private static final double NOMINAL_DEVIATION_DB = 10;

    private final Control control;
    private final List<LearnedControl.Answer> answers;
    private final List<Setting> places;

    LevelFit(Control control, List<LearnedControl.Answer> answers) {
        this.control = control;
        this.answers = answers;
        Set<Setting> distinct = new LinkedHashSet<>();
        answers.forEach(answer -> Collections.addAll(distinct, answer.from(), answer.to()));
        places = List.copyOf(distinct);
    }

    LearnedControl learned() {
        int n = places.size();
        RealMatrix normal = new Array2DRowRealMatrix(n, n);
        RealVector right = new ArrayRealVector(n);
        for (int i = 0; i < n; i++) {
            double weight = 1 / (NOMINAL_DEVIATION_DB * NOMINAL_DEVIATION_DB);
            normal.addToEntry(i, i, weight);
            right.addToEntry(i, weight * ControlEffect.gainDb(places.get(i)));
        }
        for (LearnedControl.Answer answer : answers) {
            int from = places.indexOf(answer.from());
            int to = places.indexOf(answer.to());
            for (LearnedControl.Band band : answer.bands()) {
                double weight = 1 / (band.deviationDb() * band.deviationDb());
                normal.addToEntry(from, from, weight);
                normal.addToEntry(to, to, weight);
                normal.addToEntry(from, to, -weight);
                normal.addToEntry(to, from, -weight);
                right.addToEntry(to, weight * band.changeDb());
                right.addToEntry(from, -weight * band.changeDb());
            }
        }
        DecompositionSolver solver = new CholeskyDecomposition(normal).getSolver();
        RealVector gains = solver.solve(right);
        RealMatrix covariance = solver.getInverse();
        List<LearnedControl.Curve> curves = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double deviation = Math.sqrt(Math.max(0, covariance.getEntry(i, i) + covariance.getEntry(0, 0) - 2 * covariance.getEntry(0, i)));
            curves.add(new LearnedControl.Curve(places.get(i), flat(gains.getEntry(i)), flat(deviation)));
        }
        return new LearnedControl(control.name(), LearnedControl.How.TAKES, curves, answers);
    }

    private static List<Double> flat(double value) {
        return Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), value);
    }
}
