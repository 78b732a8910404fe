package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Values by the definition of two's complement: value = integer / 2^(bits−1). */
class LinePcmTest {
    static Stream<Arguments> codes() {
        return Stream.of(
            Arguments.of(8, 1, false, new int[] {0x80}, -1f),
            Arguments.of(8, 1, false, new int[] {0x7f}, 127 / 128f),
            Arguments.of(16, 2, false, new int[] {0xff, 0x7f}, 32767 / 32768f),
            Arguments.of(16, 2, false, new int[] {0x00, 0x80}, -1f),
            Arguments.of(16, 2, false, new int[] {0xff, 0xff}, -1 / 32768f),
            Arguments.of(16, 2, true, new int[] {0x40, 0x00}, 0.5f),
            Arguments.of(24, 3, false, new int[] {0x01, 0x00, 0x00}, 1 / 8388608f),
            Arguments.of(24, 3, false, new int[] {0xff, 0xff, 0x7f}, 8388607 / 8388608f),
            Arguments.of(24, 3, true, new int[] {0x80, 0x00, 0x00}, -1f),
            Arguments.of(24, 3, true, new int[] {0xff, 0xff, 0xff}, -1 / 8388608f),
            Arguments.of(24, 4, false, new int[] {0x00, 0x00, 0x40, 0x77}, 0.5f),
            Arguments.of(24, 4, true, new int[] {0x77, 0xc0, 0x00, 0x00}, -0.5f),
            Arguments.of(32, 4, false, new int[] {0x00, 0x00, 0x00, 0xc0}, -0.5f),
            Arguments.of(32, 4, true, new int[] {0x00, 0x00, 0x01, 0x00}, 1 / 8388608f));
    }

    @ParameterizedTest(name = "{0} bit in {1} bytes, big-endian {2}: {4}")
    @MethodSource("codes")
    void everyLayoutIsReadExactly(int bits, int slotBytes, boolean bigEndian, int[] code, float expected) {
        LinePcm pcm = new LinePcm(format(bits, slotBytes, 1, bigEndian));
        float[] out = new float[1];
        pcm.decode(bytes(code), 1, 1, out);
        assertThat(out[0]).isEqualTo(expected);
    }

    @Test
    void everySixteenBitValueSurvives() {
        LinePcm pcm = new LinePcm(format(16, 2, 1, false));
        byte[] all = new byte[2 * 65536];
        for (int i = 0; i < 65536; i++) {
            all[2 * i] = (byte) i;
            all[2 * i + 1] = (byte) (i >> 8);
        }
        float[] out = new float[65536];
        pcm.decode(all, 65536, 1, out);
        for (int i = 0; i < 65536; i++) {
            assertThat(out[i] * 32768).isEqualTo((short) i);
        }
    }

    @Test
    void theChosenChannelIsHeardAndNoOther() {
        LinePcm pcm = new LinePcm(format(16, 2, 3, false));
        byte[] frames = bytes(0, 0x10, 0, 0x20, 0, 0x40, 0, 0x18, 0, 0x28, 0, 0xc0);
        float[] out = new float[2];
        pcm.decode(frames, 2, 3, out);
        assertThat(out).containsExactly(0.5f, -0.5f);
        pcm.decode(frames, 2, 1, out);
        assertThat(out).containsExactly(0x10 / 128f, 0x18 / 128f);
    }

    @Test
    void theSwingOfAChannelIsItsHighestLessItsLowest() {
        LinePcm pcm = new LinePcm(format(16, 2, 2, false));
        byte[] frames = bytes(0, 0x40, 5, 0, 0, 0xc0, 5, 0, 0, 0x20, 5, 0);
        assertThat(pcm.swing(frames, 3, 1)).isEqualTo(1.0f);
        assertThat(pcm.swing(frames, 3, 2)).as("a channel that stands still").isZero();
        assertThat(pcm.swing(bytes(0, 0x80, 0, 0, 0xff, 0x7f, 0, 0), 2, 1)).as("the whole range").isEqualTo(2f, org.assertj.core.data.Offset.offset(1e-4f));
    }

    static AudioFormat format(int bits, int slotBytes, int channels, boolean bigEndian) {
        return new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, 48_000, bits, channels, channels * slotBytes, 48_000, bigEndian);
    }

    static byte[] bytes(int... values) {
        byte[] bytes = new byte[values.length];
        for (int i = 0; i < values.length; i++) {
            bytes[i] = (byte) values[i];
        }
        return bytes;
    }
}
