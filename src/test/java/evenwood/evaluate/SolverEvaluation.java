package evenwood.evaluate;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.coach.Coach;
import evenwood.coach.PeakForecast;
import evenwood.coach.Prediction;
import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaws;
import evenwood.eq.EqChain;
import evenwood.eq.NominalLaw;
import evenwood.eq.Solution;
import evenwood.eq.Solver;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.measure.TruePeakReading;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import evenwood.takes.PackagedTakes;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.TreeMap;

/**
 * The moves that undo an equaliser put into a take, told from another phrase on the same source: parametric, and with the
 * three knobs of an amp beside the best of all their 9261 positions.
 */
public final class SolverEvaluation implements Evaluation {
    private static final double LEFT_DB = 1.5;
    private static final double OVER_BEST_DB = 0.5;
    /** The means are held to what is wanted; single takes that share few notes lie further off, and no more may than do now. */
    private static final double SHARE_WITHIN = 0.8;
    private static final String WITHIN = "3 three knobs: 1 for at most 0.5 dB over the best";
    private static final List<ThirdOctave> JUDGED = ThirdOctave.range(80, 10_000);
    private static final BandResponse RESPONSE = new BandResponse(JUDGED, LikeSources.RATE_HZ);
    private static final int EQUALISERS = 2;

    private final Map<String, List<Double>> figures = new TreeMap<>();
    private final List<Setting> knobs = new Presets(Path.of("none")).controls("amp-bass-mid-treble").controls().stream().map(Setting::neutral).toList();
    private final List<List<double[]>> effects = knobs.stream().filter(setting -> setting.control().shapesTone()).map(SolverEvaluation::effects).toList();
    private boolean[] known;

    @Override
    public void run(PrintStream out) {
        int stride = Integer.getInteger("evaluate.stride", 1);
        List<LikeSources.Source> sources = LikeSources.all();
        for (int i = 0; i < sources.size(); i += stride) {
            SplittableRandom random = new SplittableRandom(400 + i);
            LikeSources.Source source = sources.get(i);
            List<float[]> songs = source.songs().stream().map(PackagedTakes::samples).toList();
            TakeReadings wanted = heard(songs.get(2));
            for (int k = 0; k < EQUALISERS; k++) {
                EqChain chain = LikeFault.equaliser(random);
                TakeReadings heard = heard(LikeFault.through(chain, songs.get(k)));
                undo(source, chain, ToneComparison.withTake(heard, wanted).difference());
                coached(source, chain, heard, wanted);
            }
            clean(source, heard(songs.get(0)), wanted);
        }
        print(out);
    }

    /** Level is not what this is about: as if the hardest playing lay in the middle of the window. */
    private static TakeReadings heard(float[] samples) {
        TakeReadings tone = LikeSources.heard(samples);
        return new TakeReadings(tone.take(), tone.now(), tone.level(), new TruePeakReading(TargetWindow.DEFAULT.aimDbtp()), tone.loudness(), tone.activity(),
            tone.notes(), tone.noteSpectra(), tone.dynamics(), tone.spectrum(), tone.noise(), tone.clicks(), tone.dropouts(), tone.distortion(), tone.ringing());
    }

    private void undo(LikeSources.Source source, EqChain chain, ToneDifference difference) {
        known = new boolean[JUDGED.size()];
        difference.bands().stream().filter(band -> JUDGED.contains(band.band())).forEach(band -> known[JUDGED.indexOf(band.band())] = true);
        double[] put = RESPONSE.db(chain);
        figure(source, "0 put in, RMS dB", rms(put));
        if (difference.bands().isEmpty()) {
            figure(source, "1 parametric: left, RMS dB", rms(put));
            return;
        }
        figure(source, "1 parametric: left, RMS dB", rms(sum(put, RESPONSE.db(new Solver(LikeSources.RATE_HZ).solve(difference, Solver.MOST_TURNS).change()))));
        long start = System.nanoTime();
        Solution found = new Solver(LikeSources.RATE_HZ).solve(difference, knobs, ControlLaws.NOMINAL, Solver.MOST_TURNS);
        figure(source, "5 three knobs: ms, once", (System.nanoTime() - start) / 1e6);
        double left = rms(sum(put, RESPONSE.db(found.change())));
        figure(source, "2 three knobs: left, RMS dB", left);
        double over = left - leastOfAll(put);
        figure(source, "3 three knobs: over the best of all positions, RMS dB", over);
        figure(source, WITHIN, over <= OVER_BEST_DB ? 1 : 0);
        double[] heard = new double[JUDGED.size()];
        difference.bands().stream().filter(band -> JUDGED.contains(band.band())).forEach(band -> heard[JUDGED.indexOf(band.band())] = band.differenceDb());
        figure(source, "4 three knobs: over the best for what was heard, RMS dB", rms(sum(heard, RESPONSE.db(found.change()))) - leastOfAll(heard));
    }

    /** The moves that check --like prints. */
    private void coached(LikeSources.Source source, EqChain chain, TakeReadings heard, TakeReadings wanted) {
        EqChain moves = moves(heard, wanted);
        figure(source, "6 check --like: left, RMS dB", rms(sum(RESPONSE.db(chain), RESPONSE.db(moves.withGainDb(0)))));
        figure(source, "7 check --like: 1 for no moves of tone", moves.filters().isEmpty() ? 1 : 0);
    }

    private void clean(LikeSources.Source source, TakeReadings heard, TakeReadings wanted) {
        figure(source, "8 clean, check --like: 1 for moves of tone", moves(heard, wanted).filters().isEmpty() ? 0 : 1);
    }

    private static EqChain moves(TakeReadings heard, TakeReadings wanted) {
        return new Coach(TargetWindow.DEFAULT).assess(heard, Optional.of(ToneComparison.withTake(heard, wanted)), Optional.empty(), PeakForecast.fromSpectrum(heard))
            .predicted().map(Prediction::change).orElse(EqChain.FLAT);
    }

    private double leastOfAll(double[] put) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] bass : effects.get(0)) {
            for (double[] middle : effects.get(1)) {
                double[] both = sum(put, sum(bass, middle));
                for (double[] treble : effects.get(2)) {
                    least = Math.min(least, rms(sum(both, treble)));
                }
            }
        }
        return least;
    }

    private static List<double[]> effects(Setting present) {
        return present.control().gain().orElseThrow().positions().stream()
            .map(position -> new NominalLaw().bandsDb(present.withGain(position), RESPONSE)).toList();
    }

    private static double[] sum(double[] a, double[] b) {
        double[] sum = a.clone();
        for (int i = 0; i < sum.length; i++) {
            sum[i] += b[i];
        }
        return sum;
    }

    /** Around the mean, because the level does not matter, over the bands that the two takes can tell something about. */
    private double rms(double[] db) {
        double mean = 0;
        double square = 0;
        int count = 0;
        for (int i = 0; i < db.length; i++) {
            mean += known[i] ? db[i] : 0;
            square += known[i] ? db[i] * db[i] : 0;
            count += known[i] ? 1 : 0;
        }
        mean /= Math.max(1, count);
        return Math.sqrt(Math.max(0, square / Math.max(1, count) - mean * mean));
    }

    private void figure(LikeSources.Source source, String what, double value) {
        figures.computeIfAbsent((source.tuning() ? "tuning " : "test ") + what, key -> new ArrayList<>()).add(value);
    }

    private void print(PrintStream out) {
        out.println("| takes | trials | mean | median | 90 % under | largest |");
        out.println("|---|---|---|---|---|---|");
        figures.forEach((name, values) -> {
            double[] sorted = sorted(values);
            out.printf(Locale.ROOT, "| %s | %d | %.2f | %.2f | %.2f | %.2f |%n", name, sorted.length, Arrays.stream(sorted).average().orElse(0),
                sorted[sorted.length / 2], sorted[Math.min(sorted.length - 1, (int) (0.9 * sorted.length))], sorted[sorted.length - 1]);
        });
        assertThat(mean("test 1 parametric: left, RMS dB")).isLessThanOrEqualTo(LEFT_DB);
        assertThat(mean("test 3 three knobs: over the best of all positions, RMS dB")).isLessThanOrEqualTo(OVER_BEST_DB);
        assertThat(mean("test " + WITHIN)).isGreaterThanOrEqualTo(SHARE_WITHIN);
    }

    private double mean(String name) {
        return figures.get(name).stream().mapToDouble(Double::doubleValue).average().orElseThrow();
    }

    private static double[] sorted(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }
}
