package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import javax.sound.sampled.AudioFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineSourceTest {
    private static final AudioFormat FORMAT = new AudioFormat(48_000, 24, 2, true, false);

    private final AudioBlock block = new AudioBlock(512);

    @Test
    void aBlockIsFilledFromTheLineAndCountsOn() {
        LineSource source = stereo((into, offset, length) -> {
            Arrays.fill(into, offset, offset + length, (byte) 0x40);
            return length;
        });
        assertThat(source.read(block)).isEqualTo(512);
        assertThat(source.read(block)).isEqualTo(512);
        assertThat(block.startFrame()).isEqualTo(512);
        assertThat(block.sample(511)).isEqualTo(0x404040 / 8388608f);
        assertThat(source.format()).isEqualTo(new SoundFormat(48_000, 2, 1, 24));
        assertThat(source.lengthFrames()).isEmpty();
    }

    /** Channel 2 of 3 is −0.5 in every width and byte order: the top byte is 0xC0, the rest 0. */
    @ParameterizedTest(name = "{0} bit, big-endian {1}")
    @CsvSource({"8,false", "16,false", "16,true", "24,false", "24,true", "32,false", "32,true"})
    void theChosenChannelIsHeardInEveryLayout(int bits, boolean bigEndian) {
        int bytes = bits / 8;
        FakeLine line = new FakeLine((into, offset, length) -> {
            Arrays.fill(into, offset, offset + length, (byte) 0x11);
            for (int at = offset + bytes; at < offset + length; at += 3 * bytes) {
                Arrays.fill(into, at, at + bytes, (byte) 0);
                into[bigEndian ? at : at + bytes - 1] = (byte) 0xC0;
            }
            return length;
        });
        LineSource source = new LineSource(line.line(), new AudioFormat(48_000, bits, 3, true, bigEndian), 2, "stage box");
        source.read(block);
        for (int i = 0; i < 512; i++) {
            assertThat(block.sample(i)).isEqualTo(-0.5f);
        }
        assertThat(source.format().bitDepth()).isEqualTo(bits);
    }

    @Test
    void readingAllocatesNothing() {
        // The fake line itself costs about 100 bytes a call (its arguments are boxed); 512 decoded samples would cost 2048.
        LineSource source = stereo((into, offset, length) -> length);
        assertThat(evenwood.measure.Allocation.bytesOf(source::read)).isLessThan(10_000 * 512L);
    }

    @Test
    void aShortReadIsAShortBlock() {
        LineSource source = stereo((into, offset, length) -> 7 * 6);
        assertThat(source.read(block)).isEqualTo(7);
        assertThat(block.frames()).isEqualTo(7);
    }

    @Test
    void aLineThatReturnsNothingForEverIsAProblemMidway() {
        LineSource source = stereo((into, offset, length) -> 0);
        assertThatThrownBy(() -> source.read(block)).isInstanceOf(SoundProblem.class)
            .hasMessage("listen: the input \"stage box\" delivers nothing any more; check its cable and that it is switched on")
            .matches(problem -> ((SoundProblem) problem).isMidway());
    }

    @Test
    void closingEndsTheReadingInsteadOfFailing() {
        FakeLine line = new FakeLine((into, offset, length) -> 0);
        LineSource source = new LineSource(line.line(), FORMAT, 1, "stage box");
        source.close();
        assertThat(line.closed).isTrue();
        assertThat(source.read(block)).isEqualTo(-1);
    }

    @Test
    void theChannelThatCarriesSoundIsKnownAfterHalfASecond() {
        LineSource source = stereo((into, offset, length) -> {
            Arrays.fill(into, offset, offset + length, (byte) 0);
            into[offset + 5] = 0x40; // the top byte of channel 2, once a block
            return length;
        });
        for (int frames = 0; frames < 24_000; frames += 512) {
            assertThat(source.recentSwing(2)).isZero();
            source.read(block);
        }
        assertThat(source.recentSwing(1)).isZero();
        assertThat(source.recentSwing(2)).isEqualTo(0.5f);
    }

    private static LineSource stereo(FakeLine.Reader reader) {
        return new LineSource(new FakeLine(reader).line(), FORMAT, 1, "stage box");
    }
}
