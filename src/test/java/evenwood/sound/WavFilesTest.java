package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** WAV in its lawful and unlawful forms; the expected samples follow from reference §15 (integers by 2^(bits−1)). */
class WavFilesTest {
    @TempDir Path folder;

    @Test
    void sixteenBitSamplesAreDividedByTheirFullScale() throws IOException {
        Path file = write(WavBytes.pcm16(48_000, 1, 0, 1, -1, 32_767, -32_768));
        try (SoundFile source = SoundFiles.open(file, 0)) {
            assertThat(source.format()).isEqualTo(new SoundFormat(48_000, 1, 1, 16));
            assertThat(source.lengthFrames()).hasValue(5);
            assertThat(source.name()).isEqualTo(file.toString());
            assertThat(Drained.samples(source)).containsExactly(0, 1 / 32_768f, -1 / 32_768f, 32_767 / 32_768f, -1);
        }
    }

    @Test
    void eightBitSamplesAreUnsigned() throws IOException {
        assertThat(heard(WavBytes.riff().fmt(1, 1, 8_000, 1, 8).letters("data").u32(4).raw(128, 255, 0, 129)))
            .containsExactly(0, 127 / 128f, -1, 1 / 128f);
    }

    @Test
    void twentyFourBitSamplesKeepTheirSign() throws IOException {
        assertThat(heard(WavBytes.riff().fmt(1, 1, 44_100, 3, 24).letters("data").u32(12)
            .raw(1, 0, 0, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF, 0x7F, 0, 0, 0x80)))
            .containsExactly(1 / 8_388_608f, -1 / 8_388_608f, 8_388_607 / 8_388_608f, -1);
    }

    @Test
    void thirtyTwoBitIntegersAndFloatsOfBothSizesAreRead() throws IOException {
        assertThat(heard(WavBytes.riff().fmt(1, 1, 44_100, 4, 32).letters("data").u32(8).u32(0x4000_0000L).u32(0x8000_0000L)))
            .containsExactly(0.5f, -1);
        assertThat(heard(WavBytes.riff().fmt(3, 1, 44_100, 4, 32).letters("data").u32(8).floats(0.25f, -1.5f)))
            .containsExactly(0.25f, -1.5f);
        assertThat(heard(WavBytes.riff().fmt(3, 1, 44_100, 8, 64).letters("data").u32(16).doubles(0.1, -3)))
            .containsExactly(0.1f, -3);
    }

    @Test
    void extensibleFilesSayHowManyBitsCount() throws IOException {
        Path file = write(WavBytes.riff().extensible(1, 1, 48_000, 4, 32, 24).letters("data").u32(4).u32(0x7FFF_FF00L).bytes());
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(source.format().bitDepth()).isEqualTo(24);
            assertThat(Drained.samples(source)).containsExactly(8_388_607 / 8_388_608f);
        }
    }

    @Test
    void unknownSizesRunToTheEndOfTheFile() throws IOException {
        for (long size : new long[] {0, 0x7FFF_FFFFL, 0xFFFF_FFFFL}) {
            assertThat(heard(WavBytes.riff().fmt(1, 1, 48_000, 2, 16).letters("data").u32(size).samples16(1, 2, 3).raw(9)))
                .as("data size %d", size).containsExactly(1 / 32_768f, 2 / 32_768f, 3 / 32_768f);
        }
    }

    @Test
    void longSizesOfRf64AreUsedAndWhatFollowsIsNot() throws IOException {
        assertThat(heard(WavBytes.rf64().letters("ds64").u32(28).u64(0).u64(4).u64(2).u32(0).fmt(1, 1, 48_000, 2, 16)
            .letters("data").u32(0xFFFF_FFFFL).samples16(7, 8).letters("LIST").u32(4).letters("INFO")))
            .containsExactly(7 / 32_768f, 8 / 32_768f);
    }

    @Test
    void unknownChunksAreSteppedOverPaddedOrNot() throws IOException {
        assertThat(heard(WavBytes.riff().letters("junk").u32(3).raw(1, 2, 3, 0).fmt(1, 1, 48_000, 2, 16).letters("note").u32(1)
            .raw('x').letters("data").u32(2).samples16(5).letters("LIST").u32(4).letters("INFO")))
            .containsExactly(5 / 32_768f);
    }

    @Test
    void dataMayStandBeforeItsFormat() throws IOException {
        assertThat(heard(WavBytes.riff().letters("data").u32(4).samples16(1, 2).fmt(1, 1, 48_000, 2, 16)))
            .containsExactly(1 / 32_768f, 2 / 32_768f);
    }

    @Test
    void theChosenChannelIsHeardAndTheOthersAreWatched() throws IOException {
        Path file = write(WavBytes.pcm16(48_000, 3, 0, 10, 16_384, 0, 20, -32_768, 0, 30, 0));
        assertThat(Drained.samples(file, 2)).containsExactly(10 / 32_768f, 20 / 32_768f, 30 / 32_768f);
        try (SoundFile source = SoundFiles.open(file, 0)) {
            assertThat(Drained.samples(source)).containsExactly(0, 0, 0);
            assertThat(source.channelPeaks().isSilent()).isTrue();
            assertThat(source.channelPeaks().peakDbfs())
                .containsExactly(Double.NEGATIVE_INFINITY, Decibels.ofAmplitude(30 / 32_768f), 0.0);
            assertThat(source.channelPeaks().farLouderChannel()).isEqualTo(OptionalInt.of(3));
        }
    }

    @Test
    void whatIsNoNumberIsHeardAsZeroAndCounted() throws IOException {
        Path file = write(WavBytes.riff().fmt(3, 1, 48_000, 4, 32).letters("data").u32(24)
            .floats(0.5f, Float.NaN, Float.POSITIVE_INFINITY, Float.NEGATIVE_INFINITY, 2f, 1e30f).bytes());
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(Drained.samples(source)).containsExactly(0.5f, 0, 0, 0, 2f, 0);
            assertThat(source.replacedSamples()).isEqualTo(4);
        }
    }

    @Test
    void blockSizeDoesNotChangeWhatIsHeard() throws IOException {
        int[] samples = new java.util.SplittableRandom(1).ints(100_003, -32_768, 32_768).toArray();
        Path file = write(WavBytes.riff().fmt(1, 3, 48_000, 6, 16).letters("data").u32(2L * samples.length).samples16(samples).bytes());
        float[] once = Drained.samples(file, 3);
        assertThat(once).hasSize(100_003 / 3);
        for (int blockFrames : new int[] {1, 7, 512, 1023, 1025, 8192}) {
            try (SoundFile source = SoundFiles.open(file, 3)) {
                assertThat(Drained.samples(source, blockFrames)).as("blocks of %d", blockFrames).containsExactly(once);
            }
        }
    }

    private float[] heard(WavBytes bytes) throws IOException {
        return Drained.samples(write(bytes.bytes()), 1);
    }

    private Path write(byte[] bytes) throws IOException {
        return Files.write(folder.resolve("take.wav"), bytes);
    }
}
