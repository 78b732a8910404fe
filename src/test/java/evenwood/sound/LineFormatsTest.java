package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;

class LineFormatsTest {
    private static final int ANY = AudioSystem.NOT_SPECIFIED;

    @Test
    void fortyEightKilohertzAndTwentyFourBitComesFirst() {
        AudioFormat first = LineFormats.toTry(List.of(offered(ANY, 16, 2), offered(ANY, 24, 2), offered(ANY, 32, 2)), 1).get(0);
        assertThat(first.getSampleRate()).isEqualTo(48_000);
        assertThat(first.getSampleSizeInBits()).isEqualTo(24);
    }

    @Test
    void withoutFortyEightKilohertzItIsFortyFourPointOne() {
        AudioFormat first = LineFormats.toTry(List.of(offered(96_000, 24, 2), offered(44_100, 24, 2)), 1).get(0);
        assertThat(first.getSampleRate()).isEqualTo(44_100);
    }

    @Test
    void finerSamplesAtAnotherRateComeBeforeSixteenBit() {
        AudioFormat first = LineFormats.toTry(List.of(offered(48_000, 16, 2), offered(44_100, 24, 2)), 1).get(0);
        assertThat(first.getSampleSizeInBits()).isEqualTo(24);
    }

    @Test
    void aDeviceThatOnlyHasSixteenBitMonoIsTaken() {
        List<AudioFormat> formats = LineFormats.toTry(List.of(offered(16_000, 16, 1)), 1);
        assertThat(formats).hasSize(1);
        assertThat(formats.get(0).getChannels()).isEqualTo(1);
        assertThat(formats.get(0).getSampleRate()).isEqualTo(16_000);
    }

    @Test
    void theFirstChannelIsHeardInStereoWhereThereIsStereo() {
        assertThat(LineFormats.toTry(List.of(offered(ANY, 24, 1), offered(ANY, 24, 2)), 1).get(0).getChannels()).isEqualTo(2);
    }

    @Test
    void aLaterChannelTakesTheSmallestEvenCountThatHasIt() {
        List<AudioFormat> offered = List.of(offered(ANY, 24, 2), offered(ANY, 24, 3), offered(ANY, 24, 4), offered(ANY, 24, 8));
        assertThat(LineFormats.toTry(offered, 3).get(0).getChannels()).isEqualTo(4);
        assertThat(LineFormats.toTry(offered, 5).get(0).getChannels()).isEqualTo(8);
    }

    @Test
    void aDeviceWithOneFixedCountIsOpenedWithThat() {
        assertThat(LineFormats.toTry(List.of(offered(ANY, 24, 10)), 1).get(0).getChannels()).isEqualTo(10);
    }

    @Test
    void aChannelTheDeviceLacksLeavesNothingToTry() {
        assertThat(LineFormats.toTry(List.of(offered(ANY, 24, 2)), 3)).isEmpty();
    }

    @Test
    void littleEndianComesBeforeBigAndPaddedSamplesAreLeft() {
        AudioFormat padded = new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, ANY, 24, 2, 8, ANY, false);
        AudioFormat big = new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, ANY, 24, 2, 6, ANY, true);
        List<AudioFormat> order = LineFormats.toTry(List.of(padded, big, offered(ANY, 24, 2)), 1);
        assertThat(order.get(0).isBigEndian()).isFalse();
        assertThat(order.get(1).isBigEndian()).isTrue();
        assertThat(order).allMatch(format -> format.getFrameSize() == 6);
    }

    @Test
    void compandedAndUnsignedFormatsAreLeft() {
        AudioFormat unsigned = new AudioFormat(AudioFormat.Encoding.PCM_UNSIGNED, ANY, 8, 1, 1, ANY, false);
        AudioFormat companded = new AudioFormat(AudioFormat.Encoding.ULAW, ANY, 8, 1, 1, ANY, false);
        assertThat(LineFormats.toTry(List.of(unsigned, companded), 1)).isEmpty();
    }

    private static AudioFormat offered(float rateHz, int bits, int channels) {
        return new AudioFormat(AudioFormat.Encoding.PCM_SIGNED, rateHz, bits, channels, channels * bits / 8, rateHz, false);
    }
}
