package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.Move;
import evenwood.coach.PeakForecast;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.live.LiveState;
import evenwood.live.SignalReading;
import evenwood.live.WholeTake;
import evenwood.measure.TakeMeters;
import evenwood.measure.TakeReadings;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import evenwood.sound.AudioBlock;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.SoundFormat;
import evenwood.takes.CheckScore;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is drawn and said of the demo take, whose faults are known: it hums, its preamp is driven too hard. */
class PicturesTest {
    private static final Words WORDS = Words.in(Locale.ENGLISH);
    @TempDir
    private static Path folder;
    private static Rig rig;
    private static Assessment demo;
    private static Now now;

    @BeforeAll
    static void checkTheDemo() {
        Presets presets = new Presets(folder);
        var controls = presets.controls("amp-bass-mid-treble");
        rig = new Rig("", presets.instrument("octave-mandolin"), Tap.AMP_LINE_OUT, controls, controls.controls().stream().map(Setting::neutral).toList());
        TakeReadings readings = WholeTake.measure(new DemoPerformer(22_050, 1, DemoScenario.kitchen()), done -> { }).readings();
        demo = new Coach(TargetWindow.DEFAULT).assess(readings, ToneComparison.withInstrument(readings, rig.instrument(), rig.tap()),
            Optional.of(RigInUse.nominal(rig)), PeakForecast.fromSpectrum(readings));
        now = new Now(1, Optional.of(new SoundChoice.DemoChecked()), Optional.of(readings), Optional.of(demo), Optional.empty(), -1, Problem.NONE);
    }

    @Test
    void theLadderSaysThatItDistortsAndFromWhere() {
        LevelPicture level = LevelPicture.of(now, WORDS);
        assertThat(level.state()).isEqualTo(LevelPicture.State.OVER);
        assertThat(level.onsetDbfs()).isCloseTo(demo.readings().distortion().onsetDbfs().orElseThrow(), within(1e-9));
        assertThat(level.windowText()).isEqualTo("−12 to −6 dBTP");
        assertThat(level.floorText()).startsWith("−").endsWith(" dBFS");
    }

    @Test
    void beforeAnythingWasHeardNothingIsClaimed() {
        LevelPicture level = LevelPicture.of(Now.NOTHING, WORDS);
        assertThat(level.state()).isEqualTo(LevelPicture.State.NOTHING);
        assertThat(level.highestText()).isEqualTo("–");
        assertThat(BalancePicture.of(Optional.empty(), WORDS).parts()).isEmpty();
        assertThat(Headline.of(Now.NOTHING, "play", WORDS).sentence()).startsWith("Choose what to listen to");
        assertThat(Headline.of(Now.NOTHING, "hunt", WORDS).sentence()).startsWith("One change at a time");
    }

    @Test
    void theWantedSoundIsThereBeforeTheFirstNote() {
        TonePicture tone = TonePicture.of(Optional.empty(), Optional.empty(), Optional.of(rig), WORDS);
        assertThat(tone.isEmpty()).isTrue();
        assertThat(tone.wanted()).hasSize(26);
        assertThat(ToneWords.of(tone, WORDS)).startsWith("Green:");
    }

    @Test
    void faultsStandWhereTheyLive() {
        TonePicture tone = TonePicture.of(Optional.of(demo), Optional.empty(), Optional.of(rig), WORDS);
        TonePicture.Tag hum = tone.tags().stream().filter(tag -> tag.word().equals("Hum")).findFirst().orElseThrow();
        assertThat(hum.lowHz()).isLessThan(60);
        assertThat(tone.tags()).extracting(tag -> Math.sqrt(tag.lowHz() * tag.highHz())).isSorted();
        assertThat(tone.heard()).extracting(TonePicture.Point::db).allMatch(Double::isFinite);
        assertThat(tone.heard()).allMatch(point -> point.db() <= tone.topDb());
    }

    @Test
    void aCardDrawsTheOwnControlFromWhereItStandsToWhereItShould() {
        Move first = demo.moves().get(0);
        MoveCard card = MoveCard.of(first, Optional.of(rig), WORDS);
        assertThat(card.control()).isEqualTo("Gain");
        assertThat(card.shape()).isEqualTo(MoveCard.Shape.KNOB);
        assertThat(card.fromPart()).isEqualTo(0.5);
        assertThat(card.toPart()).isBetween(0.2, 0.49);
        assertThat(card.action()).startsWith("from 5 to ");
    }

    @Test
    void withoutARigACardTellsHowFar() {
        Move move = Move.gain(1, Move.Control.plain("control.gain"), -9, Statement.of("gain.down", -2.0, -12.0, -6.0), Fault.TOO_HOT);
        MoveCard card = MoveCard.of(move, Optional.empty(), WORDS);
        assertThat(card.shape()).isEqualTo(MoveCard.Shape.TURN);
        assertThat(card.toPart()).isEqualTo(0.25);
        assertThat(card.action()).isEqualTo("9 dB down");
    }

    @Test
    void aPlainBandIsAFaderAroundZero() {
        Move move = new Move(1, Move.Control.plain("control.peak", 420.0, 1.4), Move.Kind.PEAK, OptionalDouble.of(420), OptionalDouble.of(1.4),
            OptionalDouble.of(0), OptionalDouble.of(-4.5), OptionalDouble.of(-4.5), Optional.of("0 dB"), Optional.of("−4.5 dB"),
            Statement.of("eq.against-boxy", 4.0, 1.0), Fault.BOXY);
        MoveCard card = MoveCard.of(move, Optional.empty(), Words.in(Locale.GERMAN));
        assertThat(card.shape()).isEqualTo(MoveCard.Shape.FADER);
        assertThat(card.fromPart()).isEqualTo(0.5);
        assertThat(card.toPart()).isEqualTo(0.375);
        assertThat(card.to()).isEqualTo("−4,5 dB");
    }

    @Test
    void whatWasFoundIsSaidWithItsGradeAndEvidence() {
        FindingLine hum = FindingLine.of(demo, WORDS).stream().filter(line -> line.fault().equals("Hum")).findFirst().orElseThrow();
        assertThat(hum.grade()).isEqualTo("strong, sure");
        assertThat(hum.evidence()).contains("Hz").contains("dBFS");
        assertThat(FindingLine.changes(demo, WORDS)).isEmpty();
    }

    @Test
    void againstTheTakeBeforeEveryFaultIsBetterTheSameOrWorse() {
        TakeReadings cured = WholeTake.measure(new DemoPerformer(22_050, 1, DemoScenario.clean()), done -> { }).readings();
        Coach coach = new Coach(TargetWindow.DEFAULT);
        Assessment after = coach.comparedWith(coach.assess(cured), demo.readings(), Optional.empty(), OptionalDouble.empty());
        assertThat(FindingLine.changes(after, WORDS)).anyMatch(change -> change.fault().equals("Hum") && change.word().equals("better ↓"));
    }

    @Test
    void theHeadlineCountsWhatIsToDo() {
        assertThat(Headline.of(now, "play", WORDS).tone()).isEqualTo(Headline.Tone.TO_DO);
        Now broken = new Now(2, now.choice(), now.readings(), now.assessment(), Optional.empty(), -1, new Problem("problem.file-missing", List.of("x.wav"), OptionalDouble.empty()));
        assertThat(Headline.of(broken, "hunt", WORDS)).isEqualTo(new Headline(Headline.Tone.AMISS, "That did not work: There is no file x.wav. Check where it is."));
    }

    @Test
    void bassMiddleAndTrebleGetAWordEach() {
        assertThat(BalancePicture.of(Optional.of(demo), WORDS).parts()).extracting(BalancePicture.Part::name).containsExactly("Bass", "Middle", "Treble");
        assertThat(BalancePicture.of(Optional.of(demo), WORDS).parts()).allMatch(BalancePicture.Part::judged);
    }

    @Test
    void theTunerIsSilentUnlessLive() {
        assertThat(TunerPicture.of(now, WORDS, 0).clear()).isFalse();
        assertThat(TunerPicture.of(now, WORDS, 0).words()).isEqualTo("Only while live");
    }

    @Test
    void theTunerShowsNoNoteFarBelowTheInstrument() {
        float[] note = CheckScore.hard(1);
        TakeMeters meters = new TakeMeters(SoundFormat.mono(CheckScore.RATE_HZ), 10);
        meters.accept(AudioBlock.of(0, Arrays.copyOf(note, note.length * 6 / 10)));
        LiveState running = new LiveState(LiveState.Phase.RUNNING, "input", note.length, 0, List.of(), SignalReading.ALIVE, "");
        Now live = new Now(1, Optional.empty(), Optional.of(meters.readings("live")), Optional.empty(), Optional.of(running), -1, Problem.NONE);
        assertThat(TunerPicture.of(live, WORDS, 98).note()).as("196 Hz on an octave mandolin").isEqualTo("G3");
        assertThat(TunerPicture.of(live, WORDS, 392).clear()).as("and on something that begins an octave higher").isFalse();
    }
}
