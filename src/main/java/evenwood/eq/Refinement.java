package evenwood.eq;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.util.Pair;

/**
 * Moves all dials of a combination together, between their stops, to where the loss is least; then to the nearest places a
 * hand can set, and on from there step by step.
 *
 * <p>How: Levenberg and Marquardt's method (Hipparchus) with every dial scaled to 0…1 and held there, slopes by
 * differences; afterwards each dial in turn goes to a neighbouring settable place while that helps.
 */
final class Refinement {
    private static final int MOST_EVALUATIONS = 60;
    private static final double GOOD_ENOUGH = 1e-4;
    private static final double PROBE = 1e-4;
    private static final int MOST_ROUNDS = 40;
    private static final double WORTH = 1e-9;

    private final ToneLoss loss;
    private final List<Knob> knobs = new ArrayList<>();
    private final int[] firstDial;
    private final int dials;

    private Refinement(ToneLoss loss, Combination start) {
        this.loss = loss;
        start.placed().forEach(each -> knobs.add(each.knob()));
        firstDial = new int[knobs.size() + 1];
        for (int k = 0; k < knobs.size(); k++) {
            firstDial[k + 1] = firstDial[k] + knobs.get(k).least().length;
        }
        dials = firstDial[knobs.size()];
    }

    /** The best places between the stops near a start. */
    static Combination continuous(Combination start, ToneLoss loss) {
        Refinement refinement = new Refinement(loss, start);
        return refinement.dials == 0 ? start : refinement.optimise(start);
    }

    /** The best settable places near a start. */
    static Combination settable(Combination start, ToneLoss loss) {
        List<Combination.Placed> rounded = start.placed().stream()
            .map(each -> Combination.Placed.at(each.knob(), each.knob().settable(each.place()))).toList();
        Combination best = new Combination(rounded);
        double bestCost = best.cost(loss);
        for (int round = 0; round < MOST_ROUNDS; round++) {
            double before = bestCost;
            for (int k = 0; k < best.size(); k++) {
                for (double[] place : best.placed().get(k).knob().nextTo(best.placed().get(k).place())) {
                    Combination other = best.replacing(k, Combination.Placed.at(best.placed().get(k).knob(), place));
                    double cost = other.cost(loss);
                    if (cost < bestCost - WORTH) {
                        best = other;
                        bestCost = cost;
                    }
                }
            }
            if (bestCost == before) {
                break;
            }
        }
        return best;
    }

    private Combination optimise(Combination start) {
        double[] first = new double[dials];
        for (int k = 0; k < knobs.size(); k++) {
            double[] place = start.placed().get(k).place();
            for (int d = 0; d < place.length; d++) {
                double low = knobs.get(k).least()[d];
                first[firstDial[k] + d] = (place[d] - low) / (knobs.get(k).most()[d] - low);
            }
        }
        LeastSquaresProblem problem = new LeastSquaresBuilder().start(first).target(new double[2 * loss.bands() + 2])
            .model(this::residualsAndSlopes).parameterValidator(this::withinStops)
            .checker((i, a, b) -> a.getCost() - b.getCost() < GOOD_ENOUGH * b.getCost())
            .maxEvaluations(MOST_EVALUATIONS).maxIterations(MOST_EVALUATIONS).build();
        try {
            LeastSquaresOptimizer.Optimum optimum = new LevenbergMarquardtOptimizer().optimize(problem);
            Combination found = at(optimum.getPoint().toArray());
            return found.cost(loss) < start.cost(loss) ? found : start;
        } catch (MathIllegalStateException notFinished) {
            return start; // as many evaluations as it may have: what is settled step by step starts from here
        }
    }

    private RealVector withinStops(RealVector point) {
        RealVector held = point.copy();
        for (int i = 0; i < dials; i++) {
            held.setEntry(i, Math.max(0, Math.min(1, point.getEntry(i))));
        }
        return held;
    }

    private Pair<RealVector, RealMatrix> residualsAndSlopes(RealVector vector) {
        double[] point = vector.toArray();
        double[][] effects = new double[knobs.size()][];
        double[] sum = new double[loss.bands()];
        for (int k = 0; k < knobs.size(); k++) {
            effects[k] = knobs.get(k).effectDb(place(point, k));
            add(sum, effects[k], 1);
        }
        double[] here = residuals(sum, effects);
        RealMatrix slopes = new Array2DRowRealMatrix(here.length, dials);
        for (int k = 0; k < knobs.size(); k++) {
            for (int dial = firstDial[k]; dial < firstDial[k + 1]; dial++) {
                slopes.setColumn(dial, slope(point, k, dial, effects, sum, here));
            }
        }
        return new Pair<>(new ArrayRealVector(here, false), slopes);
    }

    private double[] slope(double[] point, int k, int dial, double[][] effects, double[] sum, double[] here) {
        double probe = point[dial] + PROBE > 1 ? -PROBE : PROBE;
        double[] moved = point.clone();
        moved[dial] += probe;
        double[] old = effects[k];
        double[] movedSum = sum.clone();
        effects[k] = knobs.get(k).effectDb(place(moved, k));
        add(movedSum, effects[k], 1);
        add(movedSum, old, -1);
        double[] there = residuals(movedSum, effects);
        effects[k] = old;
        return difference(there, here, probe);
    }

    private double[] residuals(double[] sum, double[][] effects) {
        double[] residuals = new double[2 * loss.bands() + 2];
        loss.residuals(sum, residuals);
        double[] effort = Effort.of(Arrays.asList(effects), loss).residuals();
        System.arraycopy(effort, 0, residuals, 2 * loss.bands(), effort.length);
        return residuals;
    }

    private Combination at(double[] point) {
        List<Combination.Placed> placed = new ArrayList<>();
        for (int k = 0; k < knobs.size(); k++) {
            placed.add(Combination.Placed.at(knobs.get(k), place(point, k)));
        }
        return new Combination(placed);
    }

    private double[] place(double[] point, int k) {
        double[] place = new double[firstDial[k + 1] - firstDial[k]];
        for (int d = 0; d < place.length; d++) {
            double low = knobs.get(k).least()[d];
            place[d] = low + point[firstDial[k] + d] * (knobs.get(k).most()[d] - low);
        }
        return place;
    }

    private static void add(double[] sum, double[] values, double sign) {
        for (int i = 0; i < sum.length; i++) {
            sum[i] += sign * values[i];
        }
    }

    private static double[] difference(double[] there, double[] here, double step) {
        double[] slope = new double[here.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (there[i] - here[i]) / step;
        }
        return slope;
    }
}
