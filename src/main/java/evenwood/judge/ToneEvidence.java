package evenwood.judge;

import evenwood.measure.ToneDifference;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.RealVector;
import org.hipparchus.special.Erf;

/**
 * How much a tone difference speaks for each {@link ToneRegion}, and how many dB of it there are.
 *
 * <p>How: the difference is taken as a level common to all bands, plus what instruments differ by (normal or Student's,
 * variance and correlation as given), plus one fault: an unknown amount of one of the region's shapes. For each region the logarithm
 * of the Bayes factor against "no fault" is averaged over its shapes, amounts drawn from half a normal distribution.
 * Source: general linear model, e.g. Gelman and others, Bayesian Data Analysis, ch. 14 (from memory, not re-read).
 * <p>Limits: bands without weight or of unknown uncertainty are left out.
 */
final class ToneEvidence {
    /** A usual fault: 8 dB, as the amounts players turn; our choice. */
    private static final double USUAL_FAULT_DB = 8;
    /** So wide that a common level, or what was already found, counts for nothing. */
    private static final double UNKNOWN_DB = 20;
    private static final double AMOUNT_STEP_DB = 1.5;
    private static final double LARGEST_FAULT_DB = 18;

    /**
     * @param logOdds     natural logarithm of the Bayes factor
     * @param rivals      the Bayes factors of all that would be called by another word alone, together
     * @param amountDb    best estimate, excess or lack
     * @param deviationDb its standard error
     */
    record Support(double logOdds, double rivals, double amountDb, double deviationDb) {
        /** How much speaks for the word against everything else. @param cleanWeight how much likelier no fault is than one certain fault */
        double ownLogOdds(double cleanWeight) {
            return logOdds - Math.log(cleanWeight + rivals);
        }
    }

    /** One shape of a region's. */
    private record Fit(ToneShape shape, RealVector column, double logOdds, double amountDb, double deviationDb) { }

    private final List<ToneDifference.Band> bands;
    private final double lowestNoteHz;
    private final Array2DRowRealMatrix covariance;
    private final RealVector difference;
    private final double freedom;
    private DecompositionSolver solver;
    private double misfit;

    ToneEvidence(ToneDifference whole, ToneSpread spread, double lowestNoteHz) {
        bands = whole.bands().stream().filter(band -> band.weight() > 0 && Double.isFinite(band.uncertaintyDb())).toList();
        this.lowestNoteHz = lowestNoteHz;
        freedom = spread.freedom();
        covariance = new Array2DRowRealMatrix(Math.max(1, bands.size()), Math.max(1, bands.size()));
        difference = new ArrayRealVector(bands.size());
        for (int i = 0; i < bands.size(); i++) {
            difference.setEntry(i, bands.get(i).differenceDb());
            for (int j = 0; j < bands.size(); j++) {
                int apart = bands.get(i).band().index() - bands.get(j).band().index();
                double hardness = square(spread.hardnessDb()) * ToneSpread.hardness(bands.get(i).centreHz()) * ToneSpread.hardness(bands.get(j).centreHz());
                covariance.setEntry(i, j, deviation(i) * deviation(j) * spread.correlation(apart) + hardness + square(UNKNOWN_DB));
            }
        }
    }

    private void solve() {
        solver = new CholeskyDecomposition(covariance).getSolver();
        misfit = difference.dotProduct(solver.solve(difference));
    }

    /** Whether anything can be said at all. */
    boolean isEmpty() {
        return bands.size() < 3;
    }

    Map<ToneRegion, Support> supports() {
        solve();
        Map<ToneRegion, List<Fit>> fits = new EnumMap<>(ToneRegion.class);
        for (ToneRegion region : ToneRegion.values()) {
            fits.put(region, region.shapes(lowestNoteHz).stream().map(shape -> fit(region, shape)).toList());
        }
        Map<ToneRegion, Support> supports = new EnumMap<>(ToneRegion.class);
        for (ToneRegion region : ToneRegion.values()) {
            Fit best = best(fits.get(region));
            double logOdds = Math.log(factors(fits.get(region).stream(), fits.get(region).size()));
            supports.put(region, new Support(logOdds, rivals(region, fits), best.amountDb, best.deviationDb));
        }
        return supports;
    }

    /** Words overlap: what another word's shape does in this word's own place may be called by either. */
    private double rivals(ToneRegion region, Map<ToneRegion, List<Fit>> fits) {
        double sum = 0;
        for (Map.Entry<ToneRegion, List<Fit>> other : fits.entrySet()) {
            if (other.getKey() != region) {
                sum += factors(other.getValue().stream().filter(fit -> !region.mayCall(other.getKey(), fit.shape, lowestNoteHz)),
                    other.getValue().size());
            }
        }
        return sum;
    }

    private static double factors(Stream<Fit> fits, int among) {
        return fits.mapToDouble(fit -> Math.exp(Math.min(300, fit.logOdds))).sum() / among;
    }

    private static Fit best(List<Fit> fits) {
        return fits.stream().max(Comparator.comparingDouble(Fit::logOdds)).orElseThrow();
    }

    /** How much speaks for exactly this shape against none, natural logarithm of the likelihoods' ratio (normal or Student's). */
    double logRatio(DoubleUnaryOperator shapeDb) {
        solve();
        RealVector shape = new ArrayRealVector(bands.stream().mapToDouble(band -> shapeDb.applyAsDouble(band.centreHz())).toArray());
        RealVector weights = solver.solve(shape);
        double better = weights.dotProduct(difference) - 0.5 * weights.dotProduct(shape);
        if (Double.isInfinite(freedom)) {
            return better;
        }
        double clean = freedom + misfit;
        return (freedom + bands.size()) / 2 * Math.log(clean / (clean - 2 * better));
    }

    /** From now on the region's best shape may be there in any amount: what else is there? */
    void accept(ToneRegion region) {
        solve();
        RealVector shape = best(region.shapes(lowestNoteHz).stream().map(each -> fit(region, each)).toList()).column;
        for (int i = 0; i < bands.size(); i++) {
            for (int j = 0; j < bands.size(); j++) {
                covariance.addToEntry(i, j, UNKNOWN_DB * UNKNOWN_DB * shape.getEntry(i) * shape.getEntry(j));
            }
        }
    }

    /** By how much of the region's likeliest shape the two tones differ, more or less of it, whatever is usual. */
    Support change(ToneRegion region) {
        solve();
        Support likeliest = null;
        for (ToneShape shape : region.shapes(lowestNoteHz)) {
            RealVector column = column(region, shape);
            RealVector weights = solver.solve(column);
            double information = weights.dotProduct(column);
            double amount = weights.dotProduct(difference) / information;
            Support support = new Support(0.5 * amount * amount * information, 0, amount, 1 / Math.sqrt(information));
            likeliest = likeliest == null || support.logOdds > likeliest.logOdds ? support : likeliest;
        }
        return likeliest;
    }

    private Fit fit(ToneRegion region, ToneShape shape) {
        RealVector column = column(region, shape);
        RealVector weights = solver.solve(column);
        double information = weights.dotProduct(column);
        double heard = weights.dotProduct(difference);
        double variance = 1 / (information + 1 / (USUAL_FAULT_DB * USUAL_FAULT_DB));
        double mean = variance * heard;
        double side = Math.max(Double.MIN_NORMAL, 1 + Erf.erf(mean / Math.sqrt(2 * variance)));
        double normal = 0.5 * Math.log(variance / (USUAL_FAULT_DB * USUAL_FAULT_DB)) + 0.5 * mean * mean / variance + Math.log(side);
        double logOdds = Double.isInfinite(freedom) ? normal : heavyTailed(information, heard);
        return new Fit(shape, column, logOdds, mean, Math.sqrt(variance));
    }

    /** The Bayes factor of Student's distribution has no closed form: the mean over evenly spaced amounts. */
    private double heavyTailed(double information, double heard) {
        double clean = freedom + misfit;
        double sum = 0;
        int count = 0;
        for (double amountDb = AMOUNT_STEP_DB; amountDb <= LARGEST_FAULT_DB; amountDb += AMOUNT_STEP_DB) {
            double left = clean - 2 * amountDb * heard + amountDb * amountDb * information;
            sum += Math.pow(clean / left, (freedom + bands.size()) / 2);
            count++;
        }
        return Math.log(Math.max(Double.MIN_NORMAL, sum / count));
    }

    private RealVector column(ToneRegion region, ToneShape shape) {
        double sign = region.isExcess() ? 1 : -1;
        return new ArrayRealVector(bands.stream().mapToDouble(band -> sign * shape.perDb(band.centreHz())).toArray());
    }

    private double deviation(int index) {
        return Math.max(0.1, bands.get(index).standardErrorDb());
    }

    private static double square(double x) {
        return x * x;
    }
}
