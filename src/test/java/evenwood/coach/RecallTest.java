package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.RigInUse;
import evenwood.measure.ToneDifference;
import evenwood.rig.LearnedControl;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RecallTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));

    @Test
    void onTheSameControlsEachGoesBackToItsPlace() {
        Rig kept = turned(rig("amp-bass-mid-treble"), "Bass", 3);
        Recall recall = Recall.of(kept, RigInUse.nominal(turned(rig("amp-bass-mid-treble"), "Treble", 7)));
        assertThat(recall.translated()).isFalse();
        Recall.Step bass = step(recall, "Bass");
        assertThat(bass.from()).contains("5");
        assertThat(bass.to()).contains("3");
        assertThat(step(recall, "Treble").to()).contains("5");
        assertThat(step(recall, "Middle").isThere()).isTrue();
        assertThat(recall.steps()).hasSameSizeAs(kept.settings());
    }

    @Test
    void withoutKnowingHowTheyStandThePositionsAreTold() {
        Recall recall = Recall.of(turned(rig("amp-bass-mid-treble"), "Bass", 3));
        assertThat(step(recall, "Bass")).isEqualTo(new Recall.Step("Bass", java.util.Optional.empty(), java.util.Optional.of("3")));
    }

    @Test
    void otherControlsAreSetByTheSound() {
        Recall recall = Recall.of(turned(rig("amp-bass-mid-treble"), "Bass", 1), RigInUse.nominal(rig("channel-strip")));
        assertThat(recall.translated()).isTrue();
        assertThat(recall.steps()).anySatisfy(step -> assertThat(step.to().orElse("")).startsWith("−"));
        assertThat(step(recall, "Trim").to()).as("a gain is for the next check").isEmpty();
    }

    /** The bass knob does nothing like what its scale says; the treble knob, which stood in the middle, is gone. */
    @Test
    void aLearnedControlThatStandsAsItStoodMakesNoDifference() {
        Rig kept = turned(rig("amp-bass-mid-treble"), "Bass", 8);
        Rig lacking = kept.with(kept.settings().stream().filter(setting -> !setting.control().name().equals("Treble")).toList());
        Setting bass = kept.setting("Bass").orElseThrow();
        List<LearnedControl.Curve> curves = Stream.of(0, 5, 10).map(at -> new LearnedControl.Curve(bass.withGain(at),
            Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), 3.0 * at), Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), 0.1))).toList();
        RigInUse present = RigInUse.of(lacking, List.of(new LearnedControl("Bass", LearnedControl.How.SWEEP, curves, List.of())));
        assertThat(Recall.of(kept, present).translated()).isTrue();
        assertThat(Recall.difference(kept, present).bands()).allSatisfy(band -> assertThat(band.differenceDb()).isCloseTo(0, within(1e-9)));
    }

    /** Whatever the amp's knobs stood at, a ten-band equaliser comes nearer to it than it was, or was near enough. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aTranslationBringsTheSoundNearer(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Rig kept = rig("amp-bass-mid-treble");
        for (String control : List.of("Bass", "Middle", "Treble")) {
            kept = turned(kept, control, random.nextInt(11));
        }
        RigInUse present = RigInUse.nominal(rig("graphic-ten-band"));
        Recall recall = Recall.of(kept, present);
        double before = rms(Recall.difference(kept, present));
        assertThat(recall.leftDb()).isLessThanOrEqualTo(before);
        if (before > 3) {
            assertThat(recall.leftDb()).isLessThan(0.7 * before);
        }
    }

    private static double rms(ToneDifference difference) {
        double mean = difference.bands().stream().filter(band -> band.weight() > 0).mapToDouble(ToneDifference.Band::differenceDb).average().orElse(0);
        return Math.sqrt(difference.bands().stream().filter(band -> band.weight() > 0).mapToDouble(band -> Math.pow(band.differenceDb() - mean, 2)).average().orElse(0));
    }

    private static Recall.Step step(Recall recall, String control) {
        return recall.steps().stream().filter(step -> step.control().equals(control)).findFirst().orElseThrow();
    }

    private static Rig rig(String controls) {
        var set = PRESETS.controls(controls);
        return new Rig("rig", PRESETS.instrument("double-bass"), Tap.AMP_LINE_OUT, set, set.controls().stream().map(Setting::neutral).toList());
    }

    private static Rig turned(Rig rig, String control, double position) {
        return rig.with(rig.settings().stream().map(setting -> setting.control().name().equals(control) ? setting.withGain(position) : setting).toList());
    }
}
