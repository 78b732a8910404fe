package evenwood.evaluate;

import evenwood.judge.ToneRegion;
import evenwood.judge.ToneRule;
import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;

/**
 * Fits the curves of {@code judge.ToneCalibration} for comparisons with an instrument: {@code mvn -q -Pevaluate verify
 * -Devaluation=ToneFitting}.
 *
 * <p>How: logistic regression by Newton's method; half the weight clean takes, a twelfth each fault, amounts 3 to 12 dB. The judge
 * holds the curves of all sources; ToneEvaluation fits them anew for each source without it, and judges it by those.
 */
public final class ToneFitting implements Evaluation {
    static final double[] AMOUNTS_DB = {3, 6, 9, 12};
    private static final int STEPS = 50;
    private static final double RIDGE = 1e-4;
    private static final double NOTHING_KNOWN = -20;

    /** A logistic curve over the logarithm of the odds. */
    record Curve(double offset, double slope) {
        double probability(double logOdds) {
            return 1 / (1 + Math.exp(-offset - slope * logOdds));
        }
    }

    @Override
    public void run(PrintStream out) {
        List<ToneExamples.Example> examples = ToneExamples.all(AMOUNTS_DB);
        out.printf("%d examples%n", examples.size());
        for (ToneRegion region : ToneRegion.values()) {
            Curve curve = curve(examples, logOdds(examples, region), region, each -> true);
            out.printf(Locale.ROOT, "            case %s -> curve(%.2f, %.2f, logOdds);%n", region, curve.offset, curve.slope);
        }
    }

    static double[] logOdds(List<ToneExamples.Example> examples, ToneRegion region) {
        return examples.stream().mapToDouble(each -> ToneRule.logOdds(each.comparison()).getOrDefault(region, NOTHING_KNOWN)).toArray();
    }

    /** @param x log odds of all examples  @param which those to learn from */
    static Curve curve(List<ToneExamples.Example> examples, double[] x, ToneRegion region, Predicate<ToneExamples.Example> which) {
        double clean = 0.5 / examples.stream().filter(which).filter(ToneExamples.Example::isClean).count();
        double faulty = 0.5 / examples.stream().filter(which).filter(each -> !each.isClean()).count();
        double offset = 0;
        double slope = 1;
        for (int step = 0; step < STEPS; step++) {
            double g0 = -RIDGE * offset;
            double g1 = -RIDGE * (slope - 1);
            double h00 = RIDGE;
            double h01 = 0;
            double h11 = RIDGE;
            for (int i = 0; i < x.length; i++) {
                ToneExamples.Example example = examples.get(i);
                if (which.test(example)) {
                    double weight = example.isClean() ? clean : faulty;
                    double p = 1 / (1 + Math.exp(-offset - slope * x[i]));
                    double off = weight * ((example.mayBeCalled(region) ? 1 : 0) - p);
                    double bend = weight * p * (1 - p);
                    g0 += off;
                    g1 += off * x[i];
                    h00 += bend;
                    h01 += bend * x[i];
                    h11 += bend * x[i] * x[i];
                }
            }
            double determinant = h00 * h11 - h01 * h01;
            offset += (h11 * g0 - h01 * g1) / determinant;
            slope += (h00 * g1 - h01 * g0) / determinant;
        }
        return new Curve(offset, slope);
    }
}
