package evenwood.evaluate;

import evenwood.judge.ToneRegion;
import evenwood.judge.ToneRule;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;

/**
 * Fits the curves of {@code judge.ToneCalibration}: {@code mvn -q -Pevaluate verify -Devaluation=ToneFitting}.
 *
 * <p>How: logistic regression by Newton's method on takes of the training sources; half the weight clean takes, a twelfth
 * each fault, amounts 3 to 12 dB.
 */
public final class ToneFitting implements Evaluation {
    private static final double[] AMOUNTS_DB = {3, 6, 9, 12};
    private static final int STEPS = 50;
    private static final double RIDGE = 1e-4;

    @Override
    public void run(PrintStream out) {
        List<ToneExamples.Example> examples = ToneExamples.all(AMOUNTS_DB).stream()
            .filter(each -> ToneEvaluation.TRAINING.contains(each.voice().voice().bank())).toList();
        out.printf("%d training examples%n", examples.size());
        for (ToneRegion region : ToneRegion.values()) {
            double[] x = examples.stream().mapToDouble(each -> ToneRule.logOdds(each.comparison()).getOrDefault(region, -20.0)).toArray();
            double[] curve = fit(examples, x, region);
            out.printf(Locale.ROOT, "            case %s -> curve(%.2f, %.2f, logOdds);%n", region, curve[0], curve[1]);
        }
    }

    private static double[] fit(List<ToneExamples.Example> examples, double[] x, ToneRegion region) {
        double clean = 0.5 / examples.stream().filter(ToneExamples.Example::isClean).count();
        double faulty = 0.5 / examples.stream().filter(each -> !each.isClean()).count();
        double offset = 0;
        double slope = 1;
        for (int step = 0; step < STEPS; step++) {
            double g0 = -RIDGE * offset;
            double g1 = -RIDGE * (slope - 1);
            double h00 = RIDGE;
            double h01 = 0;
            double h11 = RIDGE;
            for (int i = 0; i < x.length; i++) {
                double weight = examples.get(i).isClean() ? clean : faulty;
                double p = 1 / (1 + Math.exp(-offset - slope * x[i]));
                double off = weight * ((examples.get(i).has(region) ? 1 : 0) - p);
                double bend = weight * p * (1 - p);
                g0 += off;
                g1 += off * x[i];
                h00 += bend;
                h01 += bend * x[i];
                h11 += bend * x[i] * x[i];
            }
            double determinant = h00 * h11 - h01 * h01;
            offset += (h11 * g0 - h01 * g1) / determinant;
            slope += (h00 * g1 - h01 * g0) / determinant;
        }
        return new double[] {offset, slope};
    }
}
