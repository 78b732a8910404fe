package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bass, middle and treble have 9261 positions together; the solver's is held against the best of all of them. */
class SolverExhaustiveTest {
    private static final int SEEDS = 50;
    /** A tenth for a turn less, the rest for smaller turns and cuts before boosts. */
    private static final double FEWER_AND_SMALLER_DB = 0.25;
    private static final List<Control> KNOBS = new Presets(Path.of("none")).controls("amp-bass-mid-treble").controls();

    @ParameterizedTest(name = "tolerance {0} dB")
    @ValueSource(doubles = {0, 1})
    void threeKnobsComeWithinHalfADecibelOfTheBestPositions(double toleranceDb) {
        for (int seed = 0; seed < SEEDS; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            ToneDifference heard = Differences.of(Differences.someEq(random), 0.5, toleranceDb);
            List<Setting> settings = settings(random);
            Solution found = new Solver(Differences.SAMPLE_RATE_HZ).solve(heard, settings, ControlLaws.NOMINAL, 3);
            assertThat(Differences.rmsDb(found.predicted())).as("seed %d", seed).isLessThan(leastOfAll(heard, settings) + 0.5);
            assertThat(found.lossAfterDb()).as("by its own measure, seed %d", seed).isLessThan(leastLossOfAll(heard, settings) + FEWER_AND_SMALLER_DB);
        }
    }

    private static double leastLossOfAll(ToneDifference heard, List<Setting> settings) {
        List<List<double[]>> effects = settings.stream().filter(setting -> setting.control().shapesTone()).map(SolverExhaustiveTest::effects).toList();
        ToneLoss loss = new ToneLoss(heard);
        double least = Double.POSITIVE_INFINITY;
        for (double[] bass : effects.get(0)) {
            for (double[] middle : effects.get(1)) {
                for (double[] treble : effects.get(2)) {
                    double[] sum = bass.clone();
                    for (int i = 0; i < sum.length; i++) {
                        sum[i] += middle[i] + treble[i];
                    }
                    least = Math.min(least, loss.db(sum));
                }
            }
        }
        return least;
    }

    private static double leastOfAll(ToneDifference heard, List<Setting> settings) {
        List<List<double[]>> effects = settings.stream().filter(setting -> setting.control().shapesTone()).map(SolverExhaustiveTest::effects).toList();
        double least = Double.POSITIVE_INFINITY;
        for (double[] bass : effects.get(0)) {
            for (double[] middle : effects.get(1)) {
                for (double[] treble : effects.get(2)) {
                    List<Double> left = new ArrayList<>();
                    for (int i = 0; i < bass.length; i++) {
                        left.add(heard.bands().get(i).differenceDb() + bass[i] + middle[i] + treble[i]);
                    }
                    least = Math.min(least, Differences.rmsDb(left));
                }
            }
        }
        return least;
    }

    private static List<double[]> effects(Setting present) {
        double[] now = new NominalLaw().bandsDb(present, Differences.RESPONSE);
        List<double[]> effects = new ArrayList<>();
        for (double position : present.control().gain().orElseThrow().positions()) {
            double[] there = new NominalLaw().bandsDb(present.withGain(position), Differences.RESPONSE);
            for (int i = 0; i < now.length; i++) {
                there[i] -= now[i];
            }
            effects.add(there);
        }
        return effects;
    }

    private static List<Setting> settings(SplittableRandom random) {
        return KNOBS.stream().map(control -> Setting.neutral(control)
            .withGain(control.gain().orElseThrow().settable(2 + 6 * random.nextDouble()))).toList();
    }
}
