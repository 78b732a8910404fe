package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.wiring.WiringFault;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WiringWordsTest {
    @ParameterizedTest
    @EnumSource(WiringFault.class)
    void everyFaultHasItsSentenceAndItsCure(WiringFault fault) {
        assertThat(Sentences.english().say("wiring." + fault.id(), 1.0, 2.0, 3.0, 4.0)).isNotBlank();
        assertThat(Sentences.english().say("wiring-cure." + fault.id(), 1.0, 2.0, 3.0, 4.0)).isNotBlank();
    }

    /** What is said aloud must be true: no cure touches the mains earth, and amps are switched off before their cables are. */
    @Test
    void curesAreSafe() {
        assertThat(cure(WiringFault.GROUND_LOOP)).contains("Never lift or tape over a mains earth");
        for (WiringFault fault : new WiringFault[] {WiringFault.SIGNAL_CABLE_ON_SPEAKER, WiringFault.SPEAKER_INTO_INPUT, WiringFault.AMP_WITHOUT_LOAD, WiringFault.SPEAKER_LOAD_LOW}) {
            assertThat(cure(fault).toLowerCase(Locale.ROOT)).as(fault.id()).startsWith("switch ").contains("off");
        }
        for (WiringFault fault : new WiringFault[] {WiringFault.PHANTOM_ON_RIBBON, WiringFault.PHANTOM_UNWANTED, WiringFault.PHANTOM_INTO_OUTPUT}) {
            assertThat(cure(fault)).as(fault.id()).startsWith("Mute");
        }
    }

    /** A screen is not what a loudspeaker's cable lacks or has: its conductors and insulation are. */
    @Test
    void theReasonForASpeakerCableIsItsConductor() {
        assertThat(Sentences.english().say("wiring.signal-cable-on-speaker", 0.2, 0.22)).contains("0.2 mm²", "insulation").doesNotContainIgnoringCase("screen");
        assertThat(Sentences.english().say("wiring.speaker-cable-on-signal", 3.0)).contains("unscreened");
    }

    private static String cure(WiringFault fault) {
        return Sentences.english().say("wiring-cure." + fault.id(), 1.0, 2.0, 3.0, 4.0);
    }
}
