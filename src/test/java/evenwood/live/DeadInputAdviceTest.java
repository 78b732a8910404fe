package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DeadInputAdviceTest {
    @Test
    void zerosNameEverythingThatMayCauseThem() {
        assertThat(DeadInputAdvice.words(SignalReading.EXACT_ZEROS, 1, 0)).isEqualTo("channel 1 delivers nothing but exact "
            + "zeros; check the mute switch, that the plug is fully in, that the channel is the right one, and that this "
            + "program may use the microphone (on macOS: System Settings, Privacy & Security, Microphone, for the terminal "
            + "it was started from)");
    }

    @Test
    void aChannelWithSoundIsNamedInstead() {
        assertThat(DeadInputAdvice.words(SignalReading.EXACT_ZEROS, 1, 2)).isEqualTo(
            "channel 1 delivers nothing but exact zeros, but channel 2 carries sound; choose that channel");
    }

    @Test
    void aStuckValueIsTold() {
        assertThat(DeadInputAdvice.words(new SignalReading(SignalReading.Kind.STUCK, -0.25f), 3, 0)).isEqualTo(
            "channel 3 is stuck at one value (-0.2500 of full scale); check that the plug is fully in, then unplug the "
            + "interface and plug it in again");
    }
}
