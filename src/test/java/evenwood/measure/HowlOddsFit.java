package evenwood.measure;

import evenwood.evaluate.Evaluation;
import evenwood.takes.FeedbackLoop;
import evenwood.takes.PackagedTakes;
import evenwood.takes.Take;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * Makes the weights of {@link HowlOdds}: {@code mvn -q -Pevaluate verify -Devaluation=HowlOddsFit}.
 *
 * <p>How: every growing peak in takes through feedback loops is one case, a howl if it lies within 1 % of the loop's pole
 * after the gain went up; peaks elsewhere in those takes while it howls are left out, for they may be second howls.
 * Logistic regression by Newton's method. Its loops and stretches are others than those of RingingEvaluation.
 */
public final class HowlOddsFit implements Evaluation {
    private static final int RATE_HZ = 48_000;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);
    private static final long SEED = 11;
    private static final int LOOPS = 240;
    private static final int NEWTON_STEPS = 25;
    private static final double[] MARGINS_DB = {0.5, 1, 2, 3, -1, -2};
    private static final double TURNED_UP_SECONDS = 3;

    private final List<double[]> cases = new ArrayList<>();
    private final List<Boolean> howls = new ArrayList<>();

    @Override
    public void run(PrintStream out) {
        SplittableRandom random = new SplittableRandom(SEED);
        List<Take> takes = PackagedTakes.catalogue();
        for (int i = 0; i < LOOPS; i++) {
            float[] take = PackagedTakes.samples(takes.get(i * 7 % takes.size()).withRoom(-75, i + 1));
            int start = (int) (random.nextDouble(0, 8) * RATE_HZ);
            FeedbackLoop loop = FeedbackLoop.any(random, RATE_HZ);
            double marginDb = MARGINS_DB[i % MARGINS_DB.length];
            float[] heard = loop.heard(Arrays.copyOfRange(take, start, start + 10 * RATE_HZ), (int) (TURNED_UP_SECONDS * RATE_HZ), marginDb);
            collect(heard, marginDb > 0 ? loop.truth(marginDb).frequencyHz() : 0);
        }
        for (Take take : takes) {
            collect(PackagedTakes.samples(take.withRoom(-75, 1000 + take.seed())), 0);
        }
        double[] weights = fit();
        out.printf(Locale.ROOT, "%d growing peaks, %d of them howls%nweights of hops, rise, stray, below all, wander, partner; constant:%n",
            cases.size(), howls.stream().filter(howl -> howl).count());
        out.println(Arrays.toString(Arrays.stream(weights).map(weight -> Math.rint(weight * 1000) / 1000).toArray()));
    }

    /** @param howlHz where it howls once turned up; 0 for nowhere */
    private void collect(float[] sound, double howlHz) {
        RecentSpectra spectra = new RecentSpectra(GRID.hopsIn(1.2), 960);
        HowlSuspect suspect = new HowlSuspect(spectra, GRID.hopSeconds());
        RisenPeaks peaks = new RisenPeaks(7, 850);
        Blocks.feed(sound, new ShortTimeSpectrum(GRID, (hop, spectrum) -> {
            spectra.keep(spectrum.power());
            boolean turnedUp = howlHz > 0 && GRID.startSeconds(hop + 1) > TURNED_UP_SECONDS;
            for (int i = peaks.find(spectra) - 1; i >= 0; i--) {
                double hz = spectra.peakBin(0, peaks.bin(i)) * spectrum.binWidthHz();
                boolean howl = turnedUp && Math.abs(hz / howlHz - 1) < 0.01;
                double[] features = turnedUp && !howl ? null : suspect.features(peaks.bin(i));
                if (features != null) {
                    cases.add(features.clone());
                    howls.add(howl);
                }
            }
        })::accept);
    }

    private double[] fit() {
        int n = HowlOdds.FEATURES + 1;
        double[] weights = new double[n];
        for (int step = 0; step < NEWTON_STEPS; step++) {
            double[][] curvature = new double[n][n];
            double[] slope = new double[n];
            for (int c = 0; c < cases.size(); c++) {
                double[] x = Arrays.copyOf(cases.get(c), n);
                x[n - 1] = 1;
                double sum = 0;
                for (int i = 0; i < n; i++) {
                    sum += weights[i] * x[i];
                }
                double p = 1 / (1 + Math.exp(-sum));
                for (int i = 0; i < n; i++) {
                    slope[i] += ((howls.get(c) ? 1 : 0) - p) * x[i];
                    for (int j = 0; j < n; j++) {
                        curvature[i][j] += p * (1 - p) * x[i] * x[j];
                    }
                }
            }
            double[] change = new LUDecomposition(new Array2DRowRealMatrix(curvature)).getSolver().solve(new ArrayRealVector(slope)).toArray();
            for (int i = 0; i < n; i++) {
                weights[i] += change[i];
            }
        }
        return weights;
    }
}
