package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.BandResponse;
import evenwood.eq.Differences;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneSpread;
import evenwood.measure.DistortionReading;
import evenwood.measure.Note;
import evenwood.measure.NoteName;
import evenwood.measure.TakeReadings;
import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.ControlSet;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import evenwood.takes.ReadingsSketch;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ToneMovesTest {
    private static final EqChain BOOM = EqChain.of(EqFilter.lowShelf(150, EqFilter.BUTTERWORTH_Q, 10));
    private static final EqChain BOX = EqChain.of(EqFilter.peak(450, 1.2, 10));
    private static final Presets PRESETS = new Presets(Path.of("none"));
    private final Coach coach = new Coach(TargetWindow.DEFAULT);

    @Test
    void boomIsAnsweredInTheBassKnobsOwnMarking() {
        Move move = onRig(new ReadingsSketch(), BOOM, "amp-bass-mid-treble").moves().get(0);
        assertThat(move.control().ownName()).contains("Bass");
        assertThat(move.kind()).isEqualTo(Move.Kind.LOW_SHELF);
        assertThat(move.from()).contains("5");
        assertThat(move.to()).hasValueSatisfying(to -> assertThat(to).isIn("½", "1", "1½"));
        assertThat(move.toDb().orElseThrow()).isCloseTo(-10, within(1.3));
        assertThat(move.fault()).isEqualTo(Fault.BOOMY);
    }

    @Test
    void withoutARigTheMoveNamesFrequencyWidthAndDecibels() {
        Move move = plain(new ReadingsSketch(), BOX).moves().get(0);
        assertThat(move.kind()).isEqualTo(Move.Kind.PEAK);
        assertThat(move.frequencyHz().orElseThrow()).isCloseTo(450, within(30.0));
        assertThat(move.q().orElseThrow()).isCloseTo(1.2, within(0.3));
        assertThat(move.changeDb().orElseThrow()).isCloseTo(-10, within(1.0));
        assertThat(move.fault()).isEqualTo(Fault.BOXY);
    }

    /** Scales of even notes with an A2 (110 Hz) 12 dB over the rest, six times. */
    @Test
    void aNoteThatJumpsOutIsAnsweredWithANarrowCutAndNothingElseIsTurned() {
        List<Note> notes = new ArrayList<>();
        for (int scale = 0; scale < 6; scale++) {
            for (int midi = 41; midi < 60; midi += 2) {
                double level = midi == 45 ? -14 : -26 - 0.3 * scale;
                notes.add(new Note(notes.size() * 0.4, notes.size() * 0.4 + 0.35, NoteName.frequencyHz(midi), midi, 0.95, false, level + 8, level));
            }
        }
        Assessment assessment = plain(new ReadingsSketch().notes(notes), EqChain.FLAT);
        assertThat(assessment.moves()).hasSize(1);
        Move move = assessment.moves().get(0);
        assertThat(move.kind()).isEqualTo(Move.Kind.PEAK);
        assertThat(move.fault()).isEqualTo(Fault.BOOMY);
        assertThat(move.frequencyHz().orElseThrow()).isCloseTo(110, within(1.0));
        assertThat(move.q().orElseThrow()).isGreaterThan(4);
        assertThat(move.changeDb().orElseThrow()).isBetween(-9.5, -5.0);
        assertThat(assessment.predicted().orElseThrow().change().responseDb(110, 48_000)).isCloseTo(move.changeDb().orElseThrow(), within(0.1));
    }

    @Test
    void withoutAToneFindingNoToneIsTurned() {
        assertThat(plain(new ReadingsSketch(), EqChain.of(EqFilter.highShelf(4000, 0.7, 1))).moves()).isEmpty();
        assertThat(coach.assess(new ReadingsSketch().readings(), Optional.empty()).moves()).isEmpty();
    }

    @Test
    void whatDistortsComesFirstAndThreeMovesAreTheMost() {
        ReadingsSketch overdriven = new ReadingsSketch().truePeakDbtp(-20)
            .distortion(DistortionReading.Verdict.CLIPPED, DistortionReading.Stage.BEFORE_CONVERTER, OptionalDouble.of(-24), 0, 0.99);
        Assessment assessment = onRig(overdriven, EqChain.of(EqFilter.lowShelf(150, 0.7, 12), EqFilter.peak(900, 1.5, 12)), "amp-bass-mid-treble");
        assertThat(assessment.moves()).hasSize(3);
        assertThat(assessment.moves()).extracting(Move::order).containsExactly(1, 2, 3);
        assertThat(assessment.moves().get(0).fault()).isEqualTo(Fault.OVERDRIVEN);
        assertThat(assessment.moves().get(0).control().ownName()).contains("Gain");
        assertThat(assessment.moves().get(1).control().ownName()).contains("Volume");
    }

    @Test
    void gainIsStatedAsIfTheToneWerePutRight() {
        // All of the sound is in the bands that come down: the peaks come down with them.
        TakeReadings readings = new ReadingsSketch().truePeakDbtp(-3).readings();
        PeakForecast lower = change -> new PeakAfter(-3 - 5, 0);
        Assessment assessment = coach.assess(readings, Optional.of(tone(BOOM)), Optional.empty(), lower);
        assertThat(assessment.moves()).extracting(Move::kind).doesNotContain(Move.Kind.GAIN);
        PeakForecast higher = change -> new PeakAfter(-3 + 2, 0);
        Move gain = coach.assess(readings, Optional.of(tone(BOOM)), Optional.empty(), higher).moves().stream()
            .filter(move -> move.kind() == Move.Kind.GAIN).findFirst().orElseThrow();
        assertThat(gain.changeDb().orElseThrow()).isEqualTo(-8);
    }

    @Test
    void aToneThatLiftsThePeaksOverTheWindowTakesTheGainDown() {
        TakeReadings readings = new ReadingsSketch().truePeakDbtp(-7).readings();
        Assessment assessment = coach.assess(readings, Optional.of(tone(EqChain.of(EqFilter.lowShelf(200, 0.7, -10)))), Optional.empty(),
            change -> new PeakAfter(-1, 0));
        assertThat(assessment.moves()).anySatisfy(move -> {
            assertThat(move.kind()).isEqualTo(Move.Kind.GAIN);
            assertThat(move.why().key()).isEqualTo("gain.after-eq");
        });
        assertThat(assessment.predicted().orElseThrow().peak().truePeakDbtp()).isCloseTo(TargetWindow.DEFAULT.aimDbtp(), within(0.6));
    }

    @Test
    void theForecastFromTheSpectrumIsThatOfThePower() {
        // An even spectrum from 50 Hz to 16 kHz, half of whose 26 bands lose everything: 3 dB less.
        TakeReadings readings = new ReadingsSketch().truePeakDbtp(-6).readings();
        double after = PeakForecast.fromSpectrum(readings).after(EqChain.of(EqFilter.highPass(950, 4), EqFilter.highPass(950, 4))).truePeakDbtp();
        assertThat(after).isCloseTo(-9, within(0.4));
        assertThat(new BandResponse(Differences.BANDS, 48_000).bands()).hasSize(26);
    }

    private Assessment plain(ReadingsSketch sketch, EqChain eq) {
        return coach.assess(sketch.readings(), Optional.of(tone(eq)));
    }

    private Assessment onRig(ReadingsSketch sketch, EqChain eq, String controls) {
        ControlSet set = PRESETS.controls(controls);
        List<Setting> settings = set.controls().stream().map(ToneMovesTest::standing).toList();
        Rig rig = new Rig("test", PRESETS.instrument("steel-string-guitar"), Tap.AMP_LINE_OUT, set, settings);
        TakeReadings readings = sketch.readings();
        return coach.assess(readings, Optional.of(tone(eq)), Optional.of(RigInUse.nominal(rig)), PeakForecast.fromSpectrum(readings));
    }

    /** Neutral, the volume half up. */
    private static Setting standing(Control control) {
        Setting neutral = Setting.neutral(control);
        return control.kind() == Control.Kind.VOLUME ? neutral.withGain(5) : neutral;
    }

    private static ToneComparison tone(EqChain eq) {
        ToneDifference difference = Differences.of(eq, 1.5, 1);
        return new ToneComparison(ToneComparison.Against.TAKE, "other", 82, ToneSpread.OF_INSTRUMENTS, Map.of(), difference);
    }
}
