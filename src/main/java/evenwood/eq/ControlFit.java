package evenwood.eq;

import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresProblem;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;

/**
 * A tone control's real corner, width and taper from what turning it did to playing.
 *
 * <p>In: answers, each what changed in third octaves between two of its positions. Out: a learned control with a curve and
 * standard errors for each position.
 * <p>How: a filter of the control's kind with unknown corner and width, the same at all positions, and an unknown gain at each,
 * by weighted least squares with the nominal values as soft priors; the level of each answer is free, since playing is never
 * equally loud. Standard errors from the curvature, widened when the fit is worse than the answers' own. Source: nonlinear
 * least squares, Levenberg-Marquardt (Hipparchus); priors are our choice: generic presets are off by half an octave and 4 dB.
 * <p>Limits: takes at three positions predict within 1.5 dB (LearningEvaluation).
 */
final class ControlFit {
    private static final double CORNER_OCTAVES = 0.7;
    private static final double WIDTH_OCTAVES = 0.5;
    private static final double GAIN_DEVIATION_DB = 4;
    private static final double[] STARTS_OCTAVES = {0, -0.7, 0.7, -1.4, 1.4};
    private static final double LEAST_DEVIATION_DB = 0.2;
    private static final int MOST_STEPS = 200;
    private static final double SMALL = 1e-4;
    /** A box between pickup and converter is not sampled; so high that the filters show nothing of it. */
    private static final double SAMPLE_RATE_HZ = 384_000;

    private final Control control;
    private final List<LearnedControl.Answer> answers;
    private final List<Setting> places = new ArrayList<>();
    private final List<BandResponse> bands;

    ControlFit(Control control, List<LearnedControl.Answer> answers) {
        this.control = control;
        this.answers = answers;
        answers.forEach(answer -> {
            addPlace(answer.from());
            addPlace(answer.to());
        });
        bands = answers.stream().map(answer -> new BandResponse(answer.bands().stream().map(band -> ThirdOctave.containing(band.centreHz())).toList(), SAMPLE_RATE_HZ)).toList();
    }

    private void addPlace(Setting setting) {
        if (!places.contains(setting)) {
            places.add(setting);
        }
    }

    LearnedControl learned() {
        LeastSquaresOptimizer.Optimum best = null;
        for (double octaves : STARTS_OCTAVES) {
            LeastSquaresOptimizer.Optimum found = new LevenbergMarquardtOptimizer().optimize(problem(start(octaves)));
            best = best == null || found.getCost() < best.getCost() ? found : best;
        }
        double[] fitted = best.getPoint().toArray();
        int freedom = Math.max(1, answers.stream().mapToInt(answer -> answer.bands().size() - 1).sum() - fitted.length);
        double widened = Math.max(1, best.getCost() * best.getCost() / freedom);
        RealMatrix covariance = covariance(best.getJacobian()).scalarMultiply(widened);
        int reference = reference();
        List<LearnedControl.Curve> curves = new ArrayList<>();
        for (int place = 0; place < places.size(); place++) {
            curves.add(new LearnedControl.Curve(places.get(place), boxed(curve(place, fitted)), boxed(deviations(place, reference, fitted, covariance))));
        }
        return new LearnedControl(control.name(), LearnedControl.How.TAKES, curves, answers);
    }

    private static RealMatrix covariance(RealMatrix jacobian) {
        RealMatrix normal = jacobian.transposeMultiply(jacobian);
        for (int i = 0; i < normal.getRowDimension(); i++) {
            normal.addToEntry(i, i, 1e-9);
        }
        return new CholeskyDecomposition(normal, 1e-9, 1e-14).getSolver().getInverse();
    }

    /** Corner and width, each in octaves off the nominal, then what each place is off by: decibels, or octaves without a gain. */
    private double[] start(double cornerOctaves) {
        double[] start = new double[2 + places.size()];
        start[0] = cornerOctaves;
        return start;
    }

    private LeastSquaresProblem problem(double[] start) {
        double[] zero = residuals(start);
        return new LeastSquaresBuilder().start(start).target(new double[zero.length]).maxEvaluations(MOST_STEPS * 4).maxIterations(MOST_STEPS)
            .checker((iteration, before, now) -> Math.abs(before.getCost() - now.getCost()) < 1e-7 * (1 + now.getCost()))
            .model(this::residuals, this::slopes).build();
    }

    private double[][] slopes(double[] at) {
        double[] here = residuals(at);
        double[][] slopes = new double[here.length][at.length];
        for (int parameter = 0; parameter < at.length; parameter++) {
            double[] moved = at.clone();
            moved[parameter] += SMALL;
            double[] there = residuals(moved);
            for (int i = 0; i < here.length; i++) {
                slopes[i][parameter] = (there[i] - here[i]) / SMALL;
            }
        }
        return slopes;
    }

    private double[] residuals(double[] at) {
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < answers.size(); i++) {
            LearnedControl.Answer answer = answers.get(i);
            double[] to = bandsDb(places.indexOf(answer.to()), at, bands.get(i));
            double[] from = bandsDb(places.indexOf(answer.from()), at, bands.get(i));
            double sum = 0;
            double weights = 0;
            for (int band = 0; band < to.length; band++) {
                to[band] -= from[band] + answer.bands().get(band).changeDb();
                double weight = 1 / square(deviation(answer.bands().get(band)));
                sum += weight * to[band];
                weights += weight;
            }
            for (int band = 0; band < to.length; band++) {
                all.add((to[band] - sum / weights) / deviation(answer.bands().get(band)));
            }
        }
        all.add(at[0] / CORNER_OCTAVES);
        all.add(at[1] / WIDTH_OCTAVES);
        for (int place = 0; place < places.size(); place++) {
            all.add(at[2 + place] / (control.gain().isPresent() ? GAIN_DEVIATION_DB : CORNER_OCTAVES / 4));
        }
        return all.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double deviation(LearnedControl.Band band) {
        return Math.max(LEAST_DEVIATION_DB, band.deviationDb());
    }

    private double[] bandsDb(int place, double[] at, BandResponse response) {
        return places.get(place).on() ? response.db(filter(place, at)) : new double[response.bands().size()];
    }

    private EqFilter filter(int place, double[] at) {
        Setting setting = places.get(place);
        boolean gain = control.gain().isPresent();
        double hz = setting.frequencyHz() * Math.pow(2, at[0] + (gain ? 0 : at[2 + place]));
        return ControlEffect.filter(control, Math.max(5, Math.min(40_000, hz)), control.q() * Math.pow(2, at[1]), setting.gainDb() + (gain ? at[2 + place] : 0));
    }

    private double[] curve(int place, double[] at) {
        return LearnedControl.FREQUENCIES_HZ.stream()
            .mapToDouble(hz -> places.get(place).on() ? Math.max(-200, filter(place, at).responseDb(hz, SAMPLE_RATE_HZ)) : 0).toArray();
    }

    /** Of the difference to the reference, through the slopes of both curves. */
    private double[] deviations(int place, int reference, double[] at, RealMatrix covariance) {
        double[][] slopes = new double[at.length][];
        double[] here = difference(curve(place, at), curve(reference, at));
        for (int parameter = 0; parameter < at.length; parameter++) {
            double[] moved = at.clone();
            moved[parameter] += SMALL;
            slopes[parameter] = difference(difference(curve(place, moved), curve(reference, moved)), here);
        }
        double[] deviations = new double[here.length];
        for (int i = 0; i < deviations.length; i++) {
            ArrayRealVector slope = new ArrayRealVector(at.length);
            for (int parameter = 0; parameter < at.length; parameter++) {
                slope.setEntry(parameter, slopes[parameter][i] / SMALL);
            }
            deviations[i] = Math.min(99, Math.sqrt(Math.max(0, slope.dotProduct(covariance.operate(slope)))));
        }
        return deviations;
    }

    /** The place that does least. */
    private int reference() {
        int best = 0;
        for (int place = 0; place < places.size(); place++) {
            best = amount(places.get(place)) < amount(places.get(best)) ? place : best;
        }
        return best;
    }

    private static double amount(Setting setting) {
        return !setting.on() ? -1 : setting.gain().isPresent() ? Math.abs(setting.gainDb()) : setting.frequencyHz();
    }

    private static double[] difference(double[] a, double[] b) {
        double[] difference = a.clone();
        for (int i = 0; i < difference.length; i++) {
            difference[i] -= b[i];
        }
        return difference;
    }

    private static List<Double> boxed(double[] values) {
        return Arrays.stream(values).boxed().toList();
    }

    private static double square(double x) {
        return x * x;
    }
}
