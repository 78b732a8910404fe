package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class LearnedLawTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));
    private static final Control BASS = PRESETS.controls("amp-bass-mid-treble").control("Bass").orElseThrow();
    /** A bass that turns at 250 Hz and gives half as much as its preset says. */
    private static final Function<Setting, EqFilter> REAL = setting -> EqFilter.lowShelf(250, EqFilter.BUTTERWORTH_Q, setting.gainDb() / 2);

    @Test
    void atLearnedPositionsItIsWhatWasHeard() {
        assertLike(learned(0, 5, 10), 0, 10, 0.1);
        assertLike(learned(0, 5, 10), 10, 5, 0.1);
    }

    @Test
    void betweenThemTheCurvesAreMixed() {
        assertLike(learned(0, 5, 10), 5, 7.5, 0.2);
        assertLike(learned(0, 5, 10), 2, 8, 0.3);
    }

    @Test
    void beyondThemTheNominalControlGoesOn() {
        double[] db = change(learned(5, 7), 7, 10);
        double[] nominal = new NominalLaw().bandsDb(at(10), Differences.RESPONSE);
        double[] before = new NominalLaw().bandsDb(at(7), Differences.RESPONSE);
        for (int i = 0; i < db.length; i++) {
            assertThat(db[i]).isCloseTo(nominal[i] - before[i], within(1e-9));
        }
    }

    @Test
    void whatIsRenderedIsWhatIsPredicted() {
        LearnedLaw law = learned(0, 5, 10);
        double[] rendered = Differences.RESPONSE.db(law.change(at(5), at(8), Differences.RESPONSE));
        double[] predicted = change(law, 5, 8);
        for (int i = 0; i < rendered.length; i++) {
            assertThat(rendered[i]).isCloseTo(predicted[i], within(0.3));
        }
    }

    @Test
    void theSolverTurnsALearnedControlFurtherWhenItDoesLess() {
        EqChain boom = EqChain.of(EqFilter.lowShelf(250, EqFilter.BUTTERWORTH_Q, 5));
        Rig rig = new Rig("rig", PRESETS.instrument("steel-string-guitar"), Tap.AMP_LINE_OUT, PRESETS.controls("amp-bass-mid-treble"),
            PRESETS.controls("amp-bass-mid-treble").controls().stream().map(Setting::neutral).toList());
        RigInUse inUse = RigInUse.of(rig, List.of(control(0, 5, 10)));
        Solution solution = new Solver(Differences.SAMPLE_RATE_HZ).solve(Differences.of(boom, 0.5, 0.5), rig.settings(), inUse.laws(), 1);
        assertThat(solution.turns().get(0).to().orElseThrow().control()).isEqualTo(BASS);
        assertThat(solution.turns().get(0).to().orElseThrow().gain().getAsDouble()).isCloseTo(5 - 5 * 5 / 6.0, within(0.51));
        assertThat(Differences.rmsDb(solution.predicted())).isLessThan(0.4);
    }

    private static void assertLike(LearnedLaw law, double from, double to, double toleranceDb) {
        double[] db = change(law, from, to);
        double[] there = Differences.RESPONSE.db(REAL.apply(at(to)));
        double[] before = Differences.RESPONSE.db(REAL.apply(at(from)));
        for (int i = 0; i < db.length; i++) {
            assertThat(db[i]).isCloseTo(there[i] - before[i], within(toleranceDb));
        }
    }

    private static double[] change(LearnedLaw law, double from, double to) {
        double[] db = law.bandsDb(at(to), Differences.RESPONSE);
        double[] before = law.bandsDb(at(from), Differences.RESPONSE);
        for (int i = 0; i < db.length; i++) {
            db[i] -= before[i];
        }
        return db;
    }

    private static LearnedLaw learned(double... positions) {
        return new LearnedLaw(control(positions));
    }

    private static LearnedControl control(double... positions) {
        List<LearnedControl.Curve> curves = java.util.Arrays.stream(positions).mapToObj(position -> new LearnedControl.Curve(at(position),
            LearnedControl.FREQUENCIES_HZ.stream().map(hz -> REAL.apply(at(position)).responseDb(hz, Differences.SAMPLE_RATE_HZ)).toList(),
            Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), 0.0))).toList();
        return new LearnedControl("Bass", LearnedControl.How.SWEEP, curves, List.of());
    }

    private static Setting at(double position) {
        return Setting.neutral(BASS).withGain(position);
    }
}
