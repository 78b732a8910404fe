package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.Line;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.TargetDataLine;
import org.junit.jupiter.api.Test;

/** Opening, refusing and opening again, on devices that exist only here. */
class LineOpenerTest {
    private final Map<String, Mixer> devices = new HashMap<>();
    private final List<String> did = new ArrayList<>();
    private final LineOpener opener = opener(1);

    @Test
    void theBestFormatIsOpenedWithTheWantedBuffer() {
        devices.put("stage box", device(format -> true, offered(24, 2), offered(16, 2)));
        assertThat(opener.get().format()).isEqualTo(new SoundFormat(48_000, 2, 1, 24));
        assertThat(did).containsExactly("open 48000 Hz 24 bit 11520 bytes", "start");
    }

    @Test
    void aRefusedFormatIsClosedAndTheNextOneTried() {
        devices.put("stage box", device(format -> format.getSampleRate() == 44_100, offered(16, 1)));
        assertThat(opener.get().format()).isEqualTo(new SoundFormat(44_100, 1, 1, 16));
        assertThat(did).containsExactly("open 48000 Hz 16 bit 3840 bytes", "close", "open 44100 Hz 16 bit 3528 bytes", "start");
    }

    @Test
    void aBusyDeviceSaysWhy() {
        devices.put("stage box", device(format -> false, offered(16, 1)));
        assertThatThrownBy(opener::get).isInstanceOf(SoundProblem.class).hasMessage("listen: the input \"stage box\" could not be "
            + "opened (in use); close other programs that use it, and check that this one may");
    }

    @Test
    void aDeviceThatIsNotThereSaysSo() {
        assertThatThrownBy(opener::get).isInstanceOf(SoundProblem.class)
            .hasMessage("listen: the input \"stage box\" is not there; plug it in and switch it on");
    }

    @Test
    void aDeviceThatReturnsInAnotherFormatIsNotMistakenForTheOldOne() {
        devices.put("stage box", device(format -> true, offered(24, 2)));
        opener.get();
        devices.put("stage box", device(format -> true, offered(16, 2)));
        assertThatThrownBy(opener::get).isInstanceOf(SoundProblem.class).hasMessage("listen: the input \"stage box\" is back, but "
            + "without 48000 Hz, 24 bit; set it to that again, or start anew");
        devices.put("stage box", device(format -> true, offered(16, 2), offered(24, 4)));
        assertThat(opener.get().format()).as("rate and depth are what counts").isEqualTo(new SoundFormat(48_000, 4, 1, 24));
    }

    @Test
    void aChannelTheDeviceLacksNamesThoseItHas() {
        devices.put("stage box", device(format -> true, offered(24, 2)));
        assertThatThrownBy(opener(3)::get).isInstanceOf(SoundProblem.class).hasMessage(
            "listen: channel 3 of the input \"stage box\" cannot be heard, it has 2; choose channel 1 to 2");
        assertThatThrownBy(() -> opener(0)).isInstanceOf(SoundProblem.class)
            .hasMessage("listen: channel 0 cannot be; channels count from 1");
    }

    private LineOpener opener(int channel) {
        return new LineOpener("stage box", channel, 40, () -> devices);
    }

    private static AudioFormat offered(int bits, int channels) {
        return new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, AudioSystem.NOT_SPECIFIED, bits, channels, channels * bits / 8,
            AudioSystem.NOT_SPECIFIED, false);
    }

    private Mixer device(Predicate<AudioFormat> opens, AudioFormat... formats) {
        Line.Info[] lines = {new DataLine.Info(TargetDataLine.class, formats, 32, AudioSystem.NOT_SPECIFIED)};
        return (Mixer) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {Mixer.class},
            (proxy, method, arguments) -> method.getName().equals("getTargetLineInfo") ? lines : line(opens));
    }

    private TargetDataLine line(Predicate<AudioFormat> opens) {
        return (TargetDataLine) Proxy.newProxyInstance(getClass().getClassLoader(), new Class<?>[] {TargetDataLine.class},
            (proxy, method, arguments) -> {
                if (method.getName().equals("open")) {
                    AudioFormat format = (AudioFormat) arguments[0];
                    did.add("open " + (int) format.getSampleRate() + " Hz " + format.getSampleSizeInBits() + " bit "
                        + arguments[1] + " bytes");
                    if (!opens.test(format)) {
                        throw new LineUnavailableException("in use");
                    }
                } else {
                    did.add(method.getName());
                }
                return null;
            });
    }
}
