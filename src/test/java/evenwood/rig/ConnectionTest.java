package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ConnectionTest {
    private static final String HEAD = "name: Mine\ninstrument: violin\ntap: mixer-direct-out\ncontrols: channel-strip\n";
    private final Presets presets = new Presets(Path.of("nowhere"));

    @Test
    void aRigMayLeaveOutHowItIsPluggedIn() {
        assertThat(Rig.read(YamlFields.of("rig.yaml", HEAD), presets).connection()).isEmpty();
    }

    @Test
    void theWholeWayIsReadInOrder() {
        Connection connection = connection("""
              pickup: piezo-bridge
              chain:
                - { cable: instrument-cable, metres: 3 }
                - { box: piezo-di, padDb: 10, power: phantom, groundLift: true }
                - { cable: microphone-cable, metres: 20 }
              input: { id: mixer-microphone, gainDb: 24, phantom: true }
              thru:
                chain: [{ cable: instrument-cable, metres: 2 }]
                input: { id: amp-instrument }
              sameOutlet: true
              owned: { boxes: [passive-di], cables: [speaker-cable], inputs: [mixer-line] }
            """);
        assertThat(connection.pickup().seriesFarads().getAsDouble()).isEqualTo(500e-12);
        assertThat(connection.main().links()).hasSize(3).first().isEqualTo(new CableRun(presets.cable("instrument-cable"), 3));
        assertThat(connection.main().boxes()).containsExactly(new PluggedBox(presets.box("piezo-di"), 0, 10, Power.PHANTOM, true));
        assertThat(connection.main().input().phantom()).isTrue();
        assertThat(connection.main().input().gainDb()).hasValue(24);
        assertThat(connection.thru().orElseThrow().input().gainDb()).as("nobody said").isEmpty();
        assertThat(connection.owned().boxes()).extracting(Box::id).containsExactly("passive-di");
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        chain: [{ cable: instrument-cable, metres: 3 }, { cable: speaker-cable, metres: 3 }], input: { id: mixer-line } | wiring.chain: two cables in a row, but something must stand between them; add their lengths otherwise
        chain: [{ box: active-di, padDb: 12 }], input: { id: mixer-line }           | wiring.chain[1].padDb: 12.0, but this box has [20.0]
        chain: [{ box: piezo-buffer, groundLift: true }], input: { id: mixer-line } | wiring.chain[1].groundLift: true, but this box has no such switch
        chain: [{ box: passive-di, power: phantom }], input: { id: mixer-line }     | wiring.chain[1].power: phantom, but this box takes none
        chain: [], input: { id: mixer-line, phantom: true }                         | wiring.input.phantom: true, but this input has no phantom power
        chain: [], input: { id: mixer-line, gainDb: 60 }                            | wiring.input.gainDb: 60, but a number from -20 to 40 in dB is needed
        chain: [], input: { id: mixer-line }, thru: { chain: [], input: { id: amp-line } } | wiring.thru: no box in the chain has a thru socket, but one such as passive-di is needed for a second way
        """)
    void aMistakeIsNamedByFileLineAndField(String rest, String words) {
        assertThatThrownBy(() -> Rig.read(YamlFields.of("rig.yaml", HEAD + "wiring: { pickup: piezo-disc, " + rest + " }\n"), presets))
            .isInstanceOf(PresetProblem.class).hasMessage("rig.yaml, line 5, " + words);
    }

    private Connection connection(String text) {
        return Rig.read(YamlFields.of("rig.yaml", HEAD + "wiring:\n" + text), presets).connection().orElseThrow();
    }
}
