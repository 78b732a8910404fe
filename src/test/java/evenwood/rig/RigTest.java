package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RigTest {
    private static final String HEAD = "name: Mine\ninstrument: octave-mandolin\ntap: amp-line-out\ncontrols: channel-strip\n";
    private final Presets presets = new Presets(Path.of("nowhere"));

    @Test
    void positionsAreReadAsTheyStand() {
        Rig rig = rig("positions:\n  Low: -3\n  Mid: { gain: -4, frequency: 420 }\n  HPF: on\n");
        assertThat(rig.setting("low").orElseThrow().say()).isEqualTo("−3 dB");
        assertThat(rig.setting("Mid").orElseThrow().say()).isEqualTo("−4 dB at 420 Hz");
        assertThat(rig.setting("Mid").orElseThrow().frequencyHz()).isEqualTo(420);
        assertThat(rig.setting("HPF").orElseThrow().say()).isEqualTo("on");
        assertThat(rig.setting("High").orElseThrow().say()).as("untouched").isEqualTo("0 dB");
    }

    @Test
    void untouchedGearDoesNothing() {
        Rig rig = rig("");
        assertThat(rig.setting("HPF").orElseThrow().say()).isEqualTo("off");
        assertThat(rig.settings()).allSatisfy(setting -> assertThat(setting.gainDb()).isZero());
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        Low: 40 | positions.Low: 40, but a number from -15 to 15 in the control's marking is needed
        Mid: 3  | positions.Mid: 3, but it has two dials: write { gain: …, frequency: … }
        HPF: 80 | positions.HPF: 80, but it is only switched: write on or off
        Lo: 3   | positions.Lo: unknown field, but only Trim, HPF, Low, Mid, High, Fader are known here; did you mean Low?
        """)
    void aWrongPositionIsNamed(String line, String words) {
        assertThatThrownBy(() -> rig("positions:\n  " + line + "\n")).isInstanceOf(PresetProblem.class).hasMessage("rig.yaml, line 6, " + words);
    }

    @Test
    void aMissingFileIsOneLine() {
        assertThatThrownBy(() -> Rig.read(Path.of("nowhere/rig.yaml"), presets)).hasMessage("rig: nowhere/rig.yaml does not exist; check the spelling");
    }

    private Rig rig(String positions) {
        return Rig.read(YamlFields.of("rig.yaml", HEAD + positions), presets);
    }
}
