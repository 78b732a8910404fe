package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PresetsTest {
    @TempDir
    Path own;

    @Test
    void allInstrumentsOfTheDesignAreThereAndReadable() {
        Presets presets = new Presets(own);
        assertThat(presets.ids(PresetKind.INSTRUMENTS)).containsExactly("bouzouki", "cajon", "cello", "double-bass", "five-string-banjo",
            "lever-harp", "mandolin", "mountain-dulcimer", "nylon-string-guitar", "octave-mandolin", "oud", "resonator-guitar",
            "steel-string-guitar", "tenor-banjo", "twelve-string-guitar", "ukulele", "viola", "violin");
        presets.verify();
    }

    static Stream<String> instruments() {
        return new Presets(Path.of("nowhere")).ids(PresetKind.INSTRUMENTS).stream();
    }

    /** Equal temperament at A4 = 440 Hz (ISO 16): f = 440·2^((m − 69)/12). */
    @ParameterizedTest
    @MethodSource("instruments")
    void openStringsHaveThePitchOfTheirNote(String id) {
        for (Course course : new Presets(own).instrument(id).courses()) {
            for (Course.OpenString string : course.strings()) {
                assertThat(string.openHz()).as(string.note()).isCloseTo(hz(string.note()), org.assertj.core.data.Offset.offset(0.02));
            }
        }
    }

    @Test
    void anUnknownIdIsAnsweredWithNearOnes() {
        assertThatThrownBy(() -> new Presets(own).instrument("octave-mandolim")).isInstanceOf(PresetProblem.class)
            .hasMessage("preset: no instruments with the id octave-mandolim; did you mean octave-mandolin?; all ids: evenwood presets list");
    }

    @Test
    void anIdThatIsAPathIsJustUnknown() {
        assertThatThrownBy(() -> new Presets(own).instrument("../schema/instrument")).hasMessageStartingWith("preset: no instruments with the id");
    }

    @Test
    void thePlayersOwnFileWins() throws IOException {
        write("violin", "id: violin\nname: My fiddle\nplayed: bowed\nlowestHz: 190\nhighestHz: 3000\ncourses: []\nsource: mine\n");
        assertThat(new Presets(own).instrument("violin").name()).isEqualTo("My fiddle");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        lowestHz: abc  | 4 | lowestHz: abc, but a number from 16 to 5000 in Hz is needed
        lowestHz: 9    | 4 | lowestHz: 9, but a number from 16 to 5000 in Hz is needed
        lowestHz: .nan | 4 | lowestHz: .nan, but a number from 16 to 5000 in Hz is needed
        lowestHz: [1]  | 4 | lowestHz: a list, but a number from 16 to 5000 in Hz is needed
        lowHz: 90      | 1 | lowestHz: missing, but a number in Hz is needed
        """)
    void aWrongFieldIsNamedWithFileAndLine(String line, int at, String words) throws IOException {
        Path file = write("violin", "id: violin\nname: My fiddle\nplayed: bowed\n" + line + "\nhighestHz: 3000\ncourses: []\nsource: mine\n");
        assertThatThrownBy(() -> new Presets(own).instrument("violin")).hasMessage(file + ", line " + at + ", " + words);
    }

    @Test
    void anUnknownFieldIsAnsweredWithANearOne() throws IOException {
        Path file = write("violin", "id: violin\nname: My fiddle\nplayed: bowed\nlowestHz: 190\nhighestHz: 3000\ncourses: []\nsource: mine\nsourc: x\n");
        assertThatThrownBy(() -> new Presets(own).instrument("violin")).hasMessage(file
            + ", line 8, sourc: unknown field, but only id, name, played, lowestHz, highestHz, courses, source, target are known here; did you mean source?");
    }

    @Test
    void brokenYamlIsOneLineToo() throws IOException {
        write("violin", "id: violin\nname: [\n");
        assertThatThrownBy(() -> new Presets(own).instrument("violin")).isInstanceOf(PresetProblem.class)
            .hasMessageContaining("line 3").hasMessageNotContaining("\n");
    }

    private Path write(String id, String text) throws IOException {
        Path folder = Files.createDirectories(own.resolve("instruments"));
        return Files.writeString(folder.resolve(id + ".yaml"), text);
    }

    private static double hz(String note) {
        int semitone = "C D EF G A B".indexOf(note.charAt(0)) + (note.contains("#") ? 1 : 0);
        int midi = 12 * (note.charAt(note.length() - 1) - '0' + 1) + semitone;
        return 440 * Math.pow(2, (midi - 69) / 12.0);
    }
}
