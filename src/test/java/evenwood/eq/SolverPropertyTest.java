package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.ControlSet;
import evenwood.rig.Dial;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.nio.file.Path;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SolverPropertyTest {
    private static final Solver SOLVER = new Solver(Differences.SAMPLE_RATE_HZ);
    private static final List<String> SETS = List.of("amp-bass-mid-treble", "amp-two-band", "channel-strip", "graphic-seven-band",
        "graphic-ten-band", "parametric", "preamp-notch");

    static Stream<Integer> seeds() {
        return IntStream.range(0, 50).boxed();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void flatInNothingToDo(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double level = 20 * random.nextDouble() - 10;
        ToneDifference flat = Differences.of(band -> level, random.nextDouble() * 3, random.nextDouble() * 3);
        assertThat(SOLVER.solve(flat, 3).turns()).isEmpty();
        assertThat(SOLVER.solve(flat, someSettings(random), ControlLaws.NOMINAL, 3).turns()).isEmpty();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void aKnownBumpIsFoundAndUndone(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double hz = 100 * Math.pow(60, random.nextDouble());
        double gainDb = 5 + 7 * random.nextDouble();
        double q = 0.7 + 1.8 * random.nextDouble();
        Solution found = SOLVER.solve(Differences.of(EqChain.of(EqFilter.peak(hz, q, gainDb)), 0.5, 0.5), 3);
        assertThat(found.turns()).hasSize(1);
        EqFilter stage = found.turns().get(0).stage();
        assertThat(stage.kind()).isEqualTo(FilterKind.PEAK);
        assertThat(Math.log(stage.frequencyHz() / hz) / Math.log(2)).isCloseTo(0, within(0.1));
        assertThat(stage.gainDb()).isCloseTo(-gainDb, within(1.5));
        assertThat(Differences.rmsDb(found.predicted())).isLessThan(0.5);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void anEqOfUpToThreeStagesIsFoundBack(int seed) {
        EqChain eq = Differences.someEq(new SplittableRandom(seed));
        Solution found = SOLVER.solve(Differences.of(eq, 1, 1), 3);
        assertThat(Differences.rmsDb(found.predicted())).isLessThan(1.5);
        assertThat(Differences.rmsDb(found.predicted())).isLessThanOrEqualTo(Differences.rmsDb(found.before()));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void neverBeyondAKnobsRangeAndOnlyWhereAHandCanSetIt(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double size = 40 * random.nextDouble();
        ToneDifference wild = Differences.of(band -> size * (random.nextDouble() - 0.5), 0.5, 1);
        List<Setting> settings = someSettings(random);
        Solution found = SOLVER.solve(wild, settings, ControlLaws.NOMINAL, 3);
        assertThat(found.turns()).hasSizeLessThanOrEqualTo(3);
        assertThat(found.turns().stream().map(turn -> turn.from().orElseThrow().control())).doesNotHaveDuplicates();
        for (Turn turn : found.turns()) {
            Setting to = turn.to().orElseThrow();
            assertThat(settings).contains(turn.from().orElseThrow());
            to.gain().ifPresent(position -> assertSettable(to.control().gain().orElseThrow(), position));
            to.frequency().ifPresent(position -> assertSettable(to.control().frequency().orElseThrow(), position));
            assertThat(to.on() || to.control().switched()).isTrue();
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSameInputGivesTheSameAnswer(int seed) {
        ToneDifference heard = Differences.of(Differences.someEq(new SplittableRandom(seed)), 1, 1);
        List<Setting> settings = someSettings(new SplittableRandom(seed));
        assertThat(SOLVER.solve(heard, 3)).isEqualTo(SOLVER.solve(heard, 3));
        assertThat(SOLVER.solve(heard, settings, ControlLaws.NOMINAL, 3)).isEqualTo(SOLVER.solve(heard, settings, ControlLaws.NOMINAL, 3));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void nothingIsMovedForWhatMayBeChance(int seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double deviation = 1 + 2 * random.nextDouble();
        ToneDifference chance = Differences.of(band -> Math.max(-2, Math.min(2, random.nextGaussian())) * deviation, 4 * deviation, 0.5);
        assertThat(SOLVER.solve(chance, 3).turns()).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void noMoreTurnsThanAllowed(int most) {
        ToneDifference heard = Differences.of(EqChain.of(EqFilter.peak(125, 4, 9), EqFilter.peak(630, 4, 9), EqFilter.peak(3150, 4, 9)), 0.5, 0.5);
        assertThat(SOLVER.solve(heard, most).turns()).hasSize(most);
    }

    private static void assertSettable(Dial dial, double position) {
        assertThat(position).isBetween(dial.least(), dial.most()).isCloseTo(dial.settable(position), within(1e-6));
    }

    private static List<Setting> someSettings(SplittableRandom random) {
        ControlSet set = new Presets(Path.of("none")).controls(SETS.get(random.nextInt(SETS.size())));
        return set.controls().stream().map(control -> somewhere(control, random)).toList();
    }

    private static Setting somewhere(Control control, SplittableRandom random) {
        Setting setting = Setting.neutral(control);
        if (control.gain().isPresent()) {
            setting = setting.withGain(somePosition(control.gain().get(), random));
        }
        if (control.frequency().isPresent()) {
            setting = setting.withFrequency(somePosition(control.frequency().get(), random));
        }
        return control.switched() ? setting.switched(random.nextBoolean()) : setting;
    }

    private static double somePosition(Dial dial, SplittableRandom random) {
        return dial.settable(dial.least() + (dial.most() - dial.least()) * random.nextDouble());
    }
}
