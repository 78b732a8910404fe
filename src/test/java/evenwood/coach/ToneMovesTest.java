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
import evenwood.rig.Dial;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Scale;
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

    @Test
    void aNoteThatJumpsOutIsAnsweredWithANarrowCutAndNothingElseIsTurned() {
        Assessment assessment = plain(new ReadingsSketch().notes(loudA2(12)), EqChain.FLAT);
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
    void onARigANotchThatStandsIdleIsSetToTheNote() {
        Assessment assessment = onRig(new ReadingsSketch().notes(loudA2(12)), EqChain.FLAT, "preamp-notch");
        assertThat(assessment.moves()).singleElement().satisfies(move -> {
            assertThat(move.control().ownName()).contains("Notch 1");
            assertThat(move.from()).contains("off");
            assertThat(move.to()).contains("3¼"); // 60 to 400 Hz over ten marks: 110 Hz lies at 3.2
            assertThat(move.why().key()).isEqualTo("eq.against-one-note-notch");
        });
        EqChain change = assessment.predicted().orElseThrow().change();
        assertThat(change.responseDb(110, 48_000)).isLessThan(-10);
        assertThat(change.responseDb(138, 48_000)).as("four semitones above").isGreaterThan(-1.5);
    }

    @Test
    void aNotchThatTakesTheWholeFundamentalIsOnlyForNotesThatStandFarOut() {
        assertThat(onRig(new ReadingsSketch().notes(loudA2(8)), EqChain.FLAT, "preamp-notch").moves()).isEmpty();
        assertThat(plain(new ReadingsSketch().notes(loudA2(8)), EqChain.FLAT).moves()).hasSize(1);
    }

    @Test
    void controlsTooWideForOneNoteAreLeftAlone() {
        for (String wide : List.of("amp-bass-mid-treble", "channel-strip", "graphic-seven-band", "graphic-ten-band", "parametric")) {
            assertThat(onRig(new ReadingsSketch().notes(loudA2(12)), EqChain.FLAT, wide).moves()).as(wide).isEmpty();
        }
    }

    @Test
    void aNarrowBellOfTheRigIsSetToTheNoteUnlessItDoesSomethingElse() {
        Dial gain = new Dial(Scale.DB, -18, 18, 0.5, List.of());
        Control bell = new Control("Bell", Control.Kind.PEAK, OptionalDouble.empty(), Optional.of(new Dial(Scale.HZ, 40, 1000, 5, List.of())), Optional.of(gain), 6, 2, false);
        ControlSet set = new ControlSet("own", "Own", List.of(bell), "test");
        Setting idle = Setting.neutral(bell);
        Move move = assessed(new ReadingsSketch().notes(loudA2(12)), EqChain.FLAT, set, List.of(idle)).moves().get(0);
        assertThat(move.to()).contains("−9 dB at 110 Hz");
        assertThat(assessed(new ReadingsSketch().notes(loudA2(12)), EqChain.FLAT, set, List.of(idle.withGain(-4))).moves()).isEmpty();
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

    /** Scales of even notes with an A2 (110 Hz) over the rest, six times. */
    private static List<Note> loudA2(double overDb) {
        List<Note> notes = new ArrayList<>();
        for (int scale = 0; scale < 6; scale++) {
            for (int midi = 41; midi < 60; midi += 2) {
                double level = midi == 45 ? -26 + overDb : -26 - 0.3 * scale;
                notes.add(new Note(notes.size() * 0.4, notes.size() * 0.4 + 0.35, NoteName.frequencyHz(midi), midi, 0.95, false, level + 8, level));
            }
        }
        return notes;
    }

    private Assessment onRig(ReadingsSketch sketch, EqChain eq, String controls) {
        ControlSet set = PRESETS.controls(controls);
        return assessed(sketch, eq, set, set.controls().stream().map(ToneMovesTest::standing).toList());
    }

    private Assessment assessed(ReadingsSketch sketch, EqChain eq, ControlSet set, List<Setting> settings) {
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
