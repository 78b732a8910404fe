package evenwood.evaluate;

import evenwood.eq.EqChain;
import evenwood.judge.BandHz;
import evenwood.judge.ToneRegion;
import evenwood.judge.ToneRule;
import evenwood.measure.ToneDifference;
import evenwood.rig.ToneTarget;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealVector;

/**
 * Ways to tell a tone fault from the difference to a target, to be compared at the same rate of false alarms: the judge's
 * own; the plain level of the region against the rest; the likelihood ratio of faults drawn as the injected ones are, with the
 * heavy tails of Student's distribution; and Fisher's discriminant with the covariance that sources really have among
 * themselves, trained on all examples but those of the same recordings. Source: Fisher 1936, shrunk towards the diagonal;
 * multivariate t with {@value #FREEDOM} degrees of freedom, which tried best of 4 to 10.
 */
final class ToneDetectors {
    private static final double[] SHRINKAGES = {0.05, 0.2, 0.5};
    private static final double UNHEARD_DB = 0;
    private static final int FREEDOM = 5;
    private static final double SHARED = 0.89;
    private static final double CORRELATION_BANDS = 12;
    private static final double OPEN_DB = 20;
    private static final int SHAPES = 60;
    private static final long SHAPES_SEED = 77;
    private static final double MOST_DB = 18;

    private ToneDetectors() { }

    /** Scores by detector, in the order of the examples; higher speaks more for the fault. */
    static Map<String, double[]> scores(List<ToneExamples.Example> examples, ToneRegion region) {
        Map<String, double[]> scores = new LinkedHashMap<>();
        scores.put("judge", examples.stream().mapToDouble(each -> ToneRule.logOdds(each.comparison()).getOrDefault(region, -99.0)).toArray());
        scores.put("region", examples.stream().mapToDouble(each -> regionDb(each, region)).toArray());
        scores.put("likelihood", examples.stream().mapToDouble(each -> likelihood(each, region)).toArray());
        for (double shrinkage : SHRINKAGES) {
            scores.put("trained " + shrinkage, trained(examples, region, shrinkage));
        }
        return scores;
    }

    /** What of the examples scores over the value that so many of the clean ones reach. */
    static double hitRate(List<ToneExamples.Example> examples, double[] scores, ToneRegion region, double amountDb, double falseAlarms) {
        double[] clean = pick(examples, scores, ToneExamples.Example::isClean);
        java.util.Arrays.sort(clean);
        double limit = clean[(int) Math.ceil((1 - falseAlarms) * clean.length) - 1];
        double[] faulty = pick(examples, scores, each -> each.has(region) && each.amountDb() == amountDb);
        return java.util.Arrays.stream(faulty).filter(score -> score > limit).count() / (double) faulty.length;
    }

    private static double[] pick(List<ToneExamples.Example> examples, double[] scores, java.util.function.Predicate<ToneExamples.Example> which) {
        List<Double> picked = new ArrayList<>();
        for (int i = 0; i < scores.length; i++) {
            if (which.test(examples.get(i))) {
                picked.add(scores[i]);
            }
        }
        return picked.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static double regionDb(ToneExamples.Example example, ToneRegion region) {
        BandHz where = region.bandHz(example.comparison().lowestNoteHz());
        double in = mean(example, band -> band.centreHz() >= where.lowHz() && band.centreHz() <= where.highHz());
        double out = mean(example, band -> band.centreHz() < where.lowHz() || band.centreHz() > where.highHz());
        return (in - out) * (region.isExcess() ? 1 : -1);
    }

    private static double mean(ToneExamples.Example example, java.util.function.Predicate<ToneDifference.Band> which) {
        return example.comparison().difference().bands().stream().filter(band -> band.weight() > 0).filter(which)
            .mapToDouble(ToneDifference.Band::differenceDb).average().orElse(0);
    }

    /** Logarithm of the likelihood ratio against no fault, the level left open. */
    private static double likelihood(ToneExamples.Example example, ToneRegion region) {
        List<ToneDifference.Band> bands = example.comparison().difference().bands().stream().filter(band -> band.weight() > 0).toList();
        int n = bands.size();
        if (n == 0) {
            return 0;
        }
        Array2DRowRealMatrix covariance = new Array2DRowRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                int apart = Math.abs(bands.get(i).band().index() - bands.get(j).band().index());
                double correlation = apart == 0 ? 1 : SHARED * Math.exp(-apart / CORRELATION_BANDS);
                covariance.setEntry(i, j, correlation * bands.get(i).standardErrorDb() * bands.get(j).standardErrorDb() + OPEN_DB * OPEN_DB);
            }
        }
        DecompositionSolver solver = new CholeskyDecomposition(covariance).getSolver();
        RealVector heard = new ArrayRealVector(bands.stream().mapToDouble(ToneDifference.Band::differenceDb).toArray());
        double clean = Math.log(FREEDOM + heard.dotProduct(solver.solve(heard)));
        SplittableRandom random = new SplittableRandom(SHAPES_SEED);
        double sum = 0;
        for (int shape = 0; shape < SHAPES; shape++) {
            EqChain chain = LikeFault.chain(region.fault(), 1 + MOST_DB * random.nextDouble(), example.comparison().lowestNoteHz(), random);
            RealVector left = heard.subtract(new ArrayRealVector(bands.stream()
                .mapToDouble(band -> chain.responseDb(band.centreHz(), LikeSources.RATE_HZ)).toArray()));
            sum += Math.exp((FREEDOM + n) / 2.0 * (clean - Math.log(FREEDOM + left.dotProduct(solver.solve(left))))) / SHAPES;
        }
        return Math.log(Math.max(1e-300, sum));
    }

    private static double[] trained(List<ToneExamples.Example> examples, ToneRegion region, double shrinkage) {
        Map<String, RealVector> weights = new LinkedHashMap<>();
        double[] scores = new double[examples.size()];
        for (int i = 0; i < scores.length; i++) {
            ToneExamples.Example example = examples.get(i);
            RealVector each = weights.computeIfAbsent(example.source(), source -> discriminant(examples, region, shrinkage, source));
            scores[i] = each.dotProduct(vector(example));
        }
        return scores;
    }

    private static RealVector discriminant(List<ToneExamples.Example> examples, ToneRegion region, double shrinkage, String withoutSource) {
        List<RealVector> clean = new ArrayList<>();
        List<RealVector> faulty = new ArrayList<>();
        for (ToneExamples.Example example : examples) {
            if (!example.source().equals(withoutSource)) {
                if (example.isClean()) {
                    clean.add(vector(example));
                } else if (example.has(region)) {
                    faulty.add(vector(example));
                }
            }
        }
        Array2DRowRealMatrix covariance = covariance(clean);
        for (int i = 0; i < ToneTarget.BANDS; i++) {
            for (int j = 0; j < ToneTarget.BANDS; j++) {
                covariance.multiplyEntry(i, j, i == j ? 1 : 1 - shrinkage);
            }
            covariance.addToEntry(i, i, 0.5);
        }
        return new LUDecomposition(covariance).getSolver().solve(mean(faulty).subtract(mean(clean)));
    }

    private static Array2DRowRealMatrix covariance(List<RealVector> vectors) {
        RealVector mean = mean(vectors);
        Array2DRowRealMatrix covariance = new Array2DRowRealMatrix(ToneTarget.BANDS, ToneTarget.BANDS);
        for (RealVector vector : vectors) {
            RealVector off = vector.subtract(mean);
            for (int i = 0; i < ToneTarget.BANDS; i++) {
                for (int j = 0; j < ToneTarget.BANDS; j++) {
                    covariance.addToEntry(i, j, off.getEntry(i) * off.getEntry(j) / vectors.size());
                }
            }
        }
        return covariance;
    }

    private static RealVector mean(List<RealVector> vectors) {
        RealVector sum = new ArrayRealVector(ToneTarget.BANDS);
        for (RealVector vector : vectors) {
            sum = sum.add(vector);
        }
        return sum.mapDivide(vectors.size());
    }

    /** Differences against their weighted mean; a band nobody judges counts as no difference. */
    private static RealVector vector(ToneExamples.Example example) {
        double level = mean(example, band -> true);
        RealVector vector = new ArrayRealVector(ToneTarget.BANDS, UNHEARD_DB);
        for (ToneDifference.Band band : example.comparison().difference().bands()) {
            if (band.weight() > 0) {
                vector.setEntry(band.band().index() + 13, band.differenceDb() - level);
            }
        }
        return vector;
    }
}
