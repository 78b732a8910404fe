package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;

class ControlSetTest {
    private final Presets presets = new Presets(Path.of("nowhere"));

    static Stream<Path> presetFiles() throws IOException {
        return Files.walk(Path.of("presets")).filter(path -> path.toString().endsWith(".yaml")).sorted();
    }

    /** Each kind's JSON Schema stands in presets/schema under the folder's name in the singular or as it is. */
    @ParameterizedTest
    @MethodSource("presetFiles")
    void everyPresetFitsItsSchema(Path file) throws IOException {
        String folder = file.getParent().getFileName().toString();
        Path schema = Path.of("presets/schema", folder + ".schema.json");
        if (!Files.exists(schema)) {
            schema = Path.of("presets/schema", folder.replaceAll("(x)es$|s$", "$1") + ".schema.json");
        }
        JsonSchema rules = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.readString(schema));
        Object content = new Load(LoadSettings.builder().build()).loadFromString(Files.readString(file));
        assertThat(rules.validate(new ObjectMapper().valueToTree(content))).isEmpty();
    }

    @Test
    void theGenericSetsOfTheDesignAreThere() {
        assertThat(presets.ids(PresetKind.CONTROLS)).contains("amp-bass-mid-treble", "amp-two-band", "channel-strip",
            "graphic-seven-band", "graphic-ten-band", "parametric", "preamp-notch");
        presets.verify();
    }

    /** ISO 266 preferred frequencies. */
    @Test
    void graphicBandsStandAtPreferredFrequencies() {
        assertThat(centres("graphic-ten-band")).containsExactly(31.5, 63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0, 8000.0, 16000.0);
        assertThat(centres("graphic-seven-band")).containsExactly(100.0, 200.0, 400.0, 800.0, 1600.0, 3150.0, 6300.0);
    }

    private List<Double> centres(String id) {
        return presets.controls(id).controls().stream().filter(Control::shapesTone).map(control -> control.frequencyHz().orElseThrow()).toList();
    }

    @Test
    void aPositionAndItsValueAreTheSameBothWays() {
        for (String id : presets.ids(PresetKind.CONTROLS)) {
            for (Control control : presets.controls(id).controls()) {
                control.gain().ifPresent(dial -> dial.positions().forEach(position ->
                    assertThat(dial.positionOfDb(dial.db(position))).isCloseTo(position, within(1e-9))));
                control.frequency().ifPresent(dial -> dial.positions().forEach(position ->
                    assertThat(dial.positionOfHz(dial.hz(position))).isCloseTo(position, within(1e-6 * dial.most()))));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"NUMBERS, 4.5, 4½", "NUMBERS, 0.25, ¼", "NUMBERS, 0, 0", "NUMBERS, 10, 10", "CLOCK, 9.5, 9½ o’clock", "CLOCK, 14, 2 o’clock",
        "CLOCK, 12, 12 o’clock", "CLOCK, 12.5, 12½ o’clock", "DB, -4, −4 dB", "DB, 3.5, +3.5 dB", "DB, 0, 0 dB", "HZ, 420, 420 Hz", "HZ, 3150, 3.15 kHz"})
    void aPositionIsSaidAsItIsRead(Scale scale, double position, String said) {
        assertThat(scale.say(position)).isEqualTo(said);
    }

    @Test
    void aStopIsAStop() {
        Dial dial = presets.controls("amp-bass-mid-treble").control("bass").orElseThrow().gain().orElseThrow();
        assertThat(dial.db(11)).isEqualTo(12);
        assertThat(dial.positionOfDb(40)).isEqualTo(10);
        assertThat(dial.settable(6.3)).isEqualTo(6.5);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        kind: peak, gain: { scale: db, least: -9, most: 9, step: 1 } | controls[1].frequencyHz: missing, but a filter has either frequencyHz or a frequency dial
        kind: gain | controls[1].gain: missing, but a dial in dB is needed
        kind: gain, gain: { scale: db, least: 9, most: 0, step: 1 } | controls[1].gain.most: 0.0, but it must lie above least
        kind: gain, gain: { scale: db, least: 0, most: 9, step: 1, points: [{ at: 3, is: 1 }, { at: 2, is: 1 }] } | controls[1].gain.points[2].at: 2.0, but positions must rise
        kind: gane | controls[1].kind: gane, but one of gain, volume, low-shelf, high-shelf, peak, high-pass, notch is needed
        """)
    void aWrongControlIsNamedByField(String control, String words) {
        YamlFields fields = YamlFields.of("mine.yaml", "id: mine\nname: Mine\ncontrols: [{ name: A, " + control + " }]\nsource: me\n");
        assertThatThrownBy(() -> ControlSet.read(fields)).hasMessage("mine.yaml, line 3, " + words);
    }
}
