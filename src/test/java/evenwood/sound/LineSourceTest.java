package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class LineSourceTest {
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
        LineSource source = new LineSource(line.line(), LinePcmTest.format(24, 3, 2, false), 1, "stage box");
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
        return new LineSource(new FakeLine(reader).line(), LinePcmTest.format(24, 3, 2, false), 1, "stage box");
    }
}
