package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Controls of unknown corner and taper, told through answers with known errors. */
class ControlFitTest {
    private static final double RATE_HZ = 48_000;
    private static final double[] REAL_GAINS_DB = {-9, 0.5, 14};
    private static final double[] POSITIONS = {0, 5, 10};

    @ParameterizedTest(name = "{0}")
    @ValueSource(strings = {"Bass", "Middle", "Treble"})
    void cornerAndTaperAreFoundAnOctaveOffTheNominal(String name) {
        Control control = new Presets(Path.of("none")).controls("amp-bass-mid-treble").control(name).orElseThrow();
        double cornerHz = control.frequencyHz().orElseThrow() * 1.8;
        LearnedControl learned = new ControlFit(control, answers(control, cornerHz, 0.5, 3)).learned();
        LearnedControl exact = new ControlFit(control, answers(control, cornerHz, 0.2, 0)).learned();
        for (int i = 0; i < POSITIONS.length; i++) {
            for (double hz = 80; hz < 10_000; hz *= 1.2) {
                double real = real(control, cornerHz, REAL_GAINS_DB[i]).responseDb(hz, RATE_HZ) - real(control, cornerHz, REAL_GAINS_DB[1]).responseDb(hz, RATE_HZ);
                assertThat(curve(learned, POSITIONS[i]).db(hz) - curve(learned, 5).db(hz)).as("position %.0f, %.0f Hz", POSITIONS[i], hz).isCloseTo(real, within(1.0));
                assertThat(curve(exact, POSITIONS[i]).db(hz) - curve(exact, 5).db(hz)).as("position %.0f, %.0f Hz, exact answers", POSITIONS[i], hz).isCloseTo(real, within(0.5));
            }
        }
    }

    @Test
    void standardErrorsGrowWithThoseOfTheAnswers() {
        Control bass = new Presets(Path.of("none")).controls("amp-bass-mid-treble").control("Bass").orElseThrow();
        double sure = curve(new ControlFit(bass, answers(bass, 150, 0.5, 1)).learned(), 10).deviationDb().get(30);
        double unsure = curve(new ControlFit(bass, answers(bass, 150, 2, 1)).learned(), 10).deviationDb().get(30);
        assertThat(sure).isBetween(0.05, 1.0);
        assertThat(unsure).isGreaterThan(2 * sure);
    }

    @Test
    void aLevelIsFittedStraight() {
        Control volume = new Presets(Path.of("none")).controls("amp-bass-mid-treble").control("Volume").orElseThrow();
        Setting low = Setting.neutral(volume).withGain(3);
        Setting high = Setting.neutral(volume).withGain(7);
        LearnedControl learned = new LevelFit(volume, List.of(new LearnedControl.Answer(low, high, List.of(new LearnedControl.Band(1000, 18, 1))))).learned();
        assertThat(curve(learned, 7).db(1000) - curve(learned, 3).db(1000)).isCloseTo(18, within(0.2));
        assertThat(curve(learned, 7).deviationDb().get(0)).isCloseTo(1, within(0.05));
    }

    private static List<LearnedControl.Answer> answers(Control control, double cornerHz, double deviationDb, int seed) {
        Random random = new Random(seed);
        List<LearnedControl.Answer> answers = new ArrayList<>();
        for (int i = 1; i < POSITIONS.length; i++) {
            List<LearnedControl.Band> bands = new ArrayList<>();
            for (ThirdOctave band : ThirdOctave.range(80, 8000)) {
                double change = real(control, cornerHz, REAL_GAINS_DB[i]).responseDb(band.centreHz(), RATE_HZ)
                    - real(control, cornerHz, REAL_GAINS_DB[i - 1]).responseDb(band.centreHz(), RATE_HZ);
                bands.add(new LearnedControl.Band(band.centreHz(), change + 7 + (seed == 0 ? 0 : deviationDb * random.nextGaussian()), deviationDb));
            }
            answers.add(new LearnedControl.Answer(Setting.neutral(control).withGain(POSITIONS[i - 1]), Setting.neutral(control).withGain(POSITIONS[i]), bands));
        }
        return answers;
    }

    private static EqFilter real(Control control, double cornerHz, double gainDb) {
        return ControlEffect.filter(control, cornerHz, control.q(), gainDb);
    }

    private static LearnedControl.Curve curve(LearnedControl learned, double position) {
        return learned.curves().stream().filter(curve -> curve.at().gain().getAsDouble() == position).findFirst().orElseThrow();
    }
}
