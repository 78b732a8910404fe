package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RigTextTest {
    private final Presets presets = new Presets(Path.of("no-presets-of-ones-own"));

    @Test
    void whatIsWrittenReadsBackTheSameForEverySetOfControls() {
        for (String id : presets.ids(PresetKind.CONTROLS)) {
            ControlSet set = presets.controls(id);
            List<Setting> settings = set.controls().stream().map(RigTextTest::turned).toList();
            for (Tap tap : Tap.values()) {
                Rig rig = new Rig("A \"rig\" of mine", presets.instrument("violin"), tap, set, settings, Optional.empty());
                assertThat(ConnectionText.readRig(RigText.of(rig), presets)).isEqualTo(rig);
            }
        }
    }

    @Test
    void howItIsPluggedInComesAlong() {
        Connection connection = ConnectionText.read("pickup: piezo-bridge\nchain: [{ cable: instrument-cable, metres: 3 }, { box: active-di, power: phantom }]\n"
            + "input: { id: mixer-microphone, gainDb: 30, phantom: true }\n", presets);
        ControlSet set = presets.controls("amp-bass-mid-treble");
        Rig rig = new Rig("stage", presets.instrument("violin"), Tap.MICROPHONE, set, set.controls().stream().map(Setting::neutral).toList(), Optional.of(connection));
        assertThat(ConnectionText.readRig(RigText.of(rig), presets)).isEqualTo(rig);
    }

    /** Somewhere else than where it stands when nobody touched it. */
    private static Setting turned(Control control) {
        Setting setting = Setting.neutral(control);
        if (control.gain().isPresent()) {
            setting = setting.withGain(control.gain().get().least());
        }
        return control.switched() ? setting.switched(!setting.on()) : setting;
    }
}
