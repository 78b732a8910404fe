package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SettingWordsTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));

    @ParameterizedTest
    @CsvSource({"4.5, 4.5", "4½, 4.5", "½, 0.5", "10, 10", "0, 0", "+3, 3"})
    void aPositionMayBeWrittenWithItsFraction(String word, double position) {
        assertThat(Setting.ofWord(control("amp-bass-mid-treble", "Bass"), word).gain()).hasValue(position);
    }

    @Test
    void twoDialsAreWrittenWithACommaAndASwitchByItsWord() {
        Setting mid = Setting.ofWord(control("channel-strip", "Mid"), "-4,420");
        assertThat(mid.gain()).hasValue(-4);
        assertThat(mid.frequency()).hasValue(420);
        assertThat(Setting.ofWord(control("channel-strip", "HPF"), "on").on()).isTrue();
        assertThat(Setting.ofWord(control("channel-strip", "HPF"), "off").on()).isFalse();
    }

    @Test
    void whatCannotBeIsToldWithWhatCan() {
        assertThatThrownBy(() -> Setting.ofWord(control("amp-bass-mid-treble", "Bass"), "11"))
            .hasMessage("position of Bass: 11, but a number from 0.0 to 10.0 is needed, as on its own marking");
        assertThatThrownBy(() -> Setting.ofWord(control("channel-strip", "Mid"), "3")).hasMessageContaining("both dials are needed");
        assertThatThrownBy(() -> Setting.ofWord(control("channel-strip", "HPF"), "3")).hasMessageContaining("on or off");
    }

    @ParameterizedTest
    @ValueSource(strings = {"amp-bass-mid-treble", "amp-two-band", "channel-strip", "graphic-ten-band"})
    void whatASettingSaysIsUnderstoodAgain(String set) {
        for (Control control : PRESETS.controls(set).controls()) {
            Setting setting = Setting.neutral(control);
            if (control.gain().isPresent()) {
                setting = setting.withGain(control.gain().get().positions().get(3));
            }
            assertThat(Setting.ofSaid(control, setting.say())).as(control.name()).contains(setting);
        }
    }

    private static Control control(String set, String name) {
        return PRESETS.controls(set).control(name).orElseThrow();
    }
}
