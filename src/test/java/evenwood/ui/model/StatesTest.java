package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.coach.Move;
import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.rig.Dial;
import evenwood.rig.Presets;
import evenwood.rig.Scale;
import evenwood.rig.Tap;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What the window remembers and where controls stand. */
class StatesTest {
    @TempDir
    private Path folder;

    @Test
    void choicesOutliveTheWindow() {
        Path file = folder.resolve("deep/window.properties");
        new Choices(file).put("theme", "dark");
        assertThat(new Choices(file).get("theme", "light")).isEqualTo("dark");
        assertThat(new Choices(file).number("theme", 3)).isEqualTo(3);
    }

    @Test
    void aSpoiltFileCostsTheMemoryOnly() throws Exception {
        Path file = folder.resolve("window.properties");
        Files.write(file, new byte[] {'a', '=', '\\', 'u', 'x', 'y'});
        assertThat(new Choices(file).get("a", "none")).isEqualTo("none");
    }

    @Test
    void theRigIsRememberedWithItsPositions() {
        RigModel rig = rig();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        rig.choose(RigModel.Part.INSTRUMENT, "violin");
        rig.choose(Tap.MICROPHONE);
        rig.set(rig.settings().get(1).withGain(7.5));
        RigModel again = rig();
        assertThat(again.settings().get(1).gain()).hasValue(7.5);
        assertThat(again.rig().orElseThrow().instrument().id()).isEqualTo("violin");
        assertThat(again.tap()).isEqualTo(Tap.MICROPHONE);
    }

    @Test
    void anIdThatIsGoneGivesTheFirstOne() {
        new Choices(folder.resolve("rig.properties")).put("rig.instrument", "kazoo");
        assertThat(rig().chosen(RigModel.Part.INSTRUMENT)).isEqualTo("octave-mandolin");
    }

    @Test
    void afterAMoveTheControlStandsWhereTheMoveSaid() {
        RigModel rig = rig();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        rig.turned(List.of(new Move(1, Move.Control.own("Bass"), Move.Kind.LOW_SHELF, OptionalDouble.of(120), OptionalDouble.of(0.7),
            OptionalDouble.of(0), OptionalDouble.of(-3.6), OptionalDouble.of(-3.6), Optional.of("5"), Optional.of("3½"),
            Statement.of("eq.against-boomy", 3.0, 1.0), Fault.BOOMY)));
        assertThat(rig.rig().orElseThrow().setting("Bass").orElseThrow().gain()).hasValue(3.5);
    }

    @Test
    void ofALearnedControlThePositionCountsAndNotItsDecibels() {
        RigModel rig = rig();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        rig.turned(List.of(new Move(1, Move.Control.own("Gain"), Move.Kind.GAIN, OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(0),
            OptionalDouble.of(-2), OptionalDouble.of(-2), Optional.of("5"), Optional.of("3½"), Statement.of("gain.down", 1.0, 2.0, 3.0), Fault.TOO_HOT)));
        assertThat(rig.rig().orElseThrow().setting("Gain").orElseThrow().gain()).hasValue(3.5);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', value = {"6½ | 6.5", "6.5 | 6.5", "6,5 | 6.5", "¼ | 0.25", "12 | 10", "-3 | 0", "7 of 10 | 7"})
    void aTypedPositionIsUnderstood(String typed, double position) {
        Dial dial = new Dial(Scale.NUMBERS, 0, 10, 0.25, List.of());
        if (typed.contains("of")) {
            assertThat(DialText.position(typed, dial)).isEmpty();
        } else {
            assertThat(DialText.position(typed, dial)).hasValue(position);
        }
    }

    @ParameterizedTest
    @CsvSource({"−4 dB, -4", "-4, -4", "+3 dB, 3", "99, 15"})
    void decibelsCarryTheirSign(String typed, double position) {
        assertThat(DialText.position(typed, new Dial(Scale.DB, -15, 15, 1, List.of()))).hasValue(position);
    }

    @Test
    void hertzClockAndNonsense() {
        assertThat(DialText.position("2.5 kHz", new Dial(Scale.HZ, 100, 8000, 10, List.of()))).hasValue(2500);
        assertThat(DialText.position("2 o’clock", new Dial(Scale.CLOCK, 7, 17, 0.5, List.of()))).hasValue(14);
        assertThat(DialText.position("loud", new Dial(Scale.CLOCK, 7, 17, 0.5, List.of()))).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({"−4.5 dB at 1.25 kHz, '−4,5 dB bei 1,25 kHz'", "off, aus", "2½ o’clock, 2½ Uhr"})
    void positionsAreSaidInThePlayersLanguage(String marking, String german) {
        assertThat(Positions.say(marking, Words.in(Locale.GERMAN))).isEqualTo(german);
        assertThat(Positions.say(marking, Words.in(Locale.ENGLISH))).isEqualTo(marking);
    }

    @Test
    void theStripKeepsFiveMinutesAndNoMore() {
        StripHistory strip = new StripHistory();
        for (int i = 0; i < 8000; i++) {
            strip.add(i * 0.05, -20, -30, Set.of());
        }
        List<StripHistory.Moment> moments = strip.moments();
        assertThat(moments.get(0).seconds()).isGreaterThan(95);
        assertThat(moments.size()).isLessThanOrEqualTo(1200);
    }

    @Test
    void aPeakBetweenTwoMomentsIsNotLost() {
        StripHistory strip = new StripHistory();
        strip.add(0, -40, -50, Set.of());
        strip.add(0.1, -3, -50, Set.of());
        strip.add(0.25, -40, -50, Set.of());
        assertThat(strip.moments().get(1).peakDbtp()).isEqualTo(-3);
    }

    @Test
    void aMomentPointedAtIsRead() {
        StripHistory strip = new StripHistory();
        for (int i = 0; i < 100; i++) {
            strip.add(i, -20 - i, -30, i == 40 ? Set.of(Fault.HUM) : Set.of());
        }
        StripPicture picture = StripPicture.of(strip.moments(), 40.2, Words.in(Locale.ENGLISH));
        assertThat(picture.chosen()).isEqualTo(40);
        assertThat(picture.caption()).isEqualTo("At 0:40: peak −60.0 dBTP, loudness −30.0 LUFS, found: Hum");
    }

    private RigModel rig() {
        return new RigModel(new Presets(folder), new Choices(folder.resolve("rig.properties")));
    }
}
