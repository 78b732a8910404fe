package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;

class ConnectionTextTest {
    private final Presets presets = new Presets(Path.of("no-such-folder"));

    @Test
    void whatIsWrittenReadsBackTheSame() {
        Connection connection = ConnectionText.read("""
            pickup: piezo-bridge
            chain: [{ cable: instrument-cable, metres: 4.5 }, { box: active-di, power: battery, padDb: 20, groundLift: true }, { cable: microphone-cable, metres: 15 }]
            input: { id: mixer-microphone, gainDb: 30, phantom: true }
            thru:
              chain: [{ cable: instrument-cable, metres: 2 }]
              input: { id: amp-instrument }
            sameOutlet: false
            owned: { boxes: [passive-di], cables: [speaker-cable], inputs: [amp-line] }
            """, presets);

        assertThat(ConnectionText.read(ConnectionText.of(connection), presets)).isEqualTo(connection);
    }

    @Test
    void theShortestChainReadsBackToo() {
        Connection connection = ConnectionText.read("pickup: piezo-disc\nchain: []\ninput: { id: amp-instrument }\n", presets);

        assertThat(ConnectionText.read(ConnectionText.of(connection), presets)).isEqualTo(connection);
    }

    @Test
    void anUnknownBoxIsToldByItsName() {
        assertThatThrownBy(() -> ConnectionText.read("pickup: piezo-disc\nchain: [{ box: no-such-box }]\ninput: { id: amp-instrument }\n", presets))
            .isInstanceOf(PresetProblem.class).hasMessageContaining("no-such-box");
    }
}
