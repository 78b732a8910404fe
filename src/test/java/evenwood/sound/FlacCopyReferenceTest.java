package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A sound kept as FLAC is the sound that it was: as flac's own test, ffmpeg's decoder and ours have it. */
class FlacCopyReferenceTest {
    private static final int[] LENGTHS = {1, 2, 3, 4, 5, 16, 31, 32, 4095, 4096, 4097, 4098, 4100, 8192, 20_001};

    @TempDir Path folder;

    /** How the samples of a file run; each is hard on another part of an encoder. */
    private enum Course {
        SILENCE, FULL_SCALE_SQUARE, NOISE, QUIET_NOISE, SINE, LOUD_SINE, STEADY, ONE_CLICK, SILENCE_THEN_NOISE;

        int value(int frame, int channel, int most, SplittableRandom random) {
            return switch (this) {
                case SILENCE -> 0;
                case FULL_SCALE_SQUARE -> (frame / (7 + channel)) % 2 == 0 ? most : -most - 1;
                case NOISE -> random.nextInt(-most - 1, most) + 1;
                case QUIET_NOISE -> random.nextInt(5) - 2;
                case SINE -> (int) Math.rint(0.3 * most * Math.sin(0.05 * (1 + channel) * frame));
                case LOUD_SINE -> (int) Math.rint(most * Math.sin(0.31 * frame));
                case STEADY -> -most / 3 + channel;
                case ONE_CLICK -> frame == 5 ? -most - 1 : 0;
                case SILENCE_THEN_NOISE -> frame < 6000 ? 0 : random.nextInt(-most - 1, most);
            };
        }
    }

    @ParameterizedTest(name = "{0} bits, {1} channels, {2} Hz")
    @CsvSource({"16, 1, 44100", "16, 2, 48000", "24, 1, 96000", "24, 2, 44100", "24, 3, 192000", "16, 8, 8000", "24, 8, 47999", "24, 2, 11025"})
    void anyCourseOfSamplesComesBackBitForBit(int bits, int channels, int rateHz) throws IOException {
        SplittableRandom random = new SplittableRandom(bits * 31L + channels);
        for (Course course : Course.values()) {
            for (int frames : LENGTHS) {
                int[] values = values(course, frames, channels, bits, random);
                Path flac = folder.resolve("copy.flac");
                FlacCopy copy = FlacCopy.write(wav(values, channels, rateHz, bits), flac);
                assertThat(copy).as("%s, %d frames", course, frames).isEqualTo(new FlacCopy(bits, 0, 0));
                assertThat(decoded(flac, channels, bits)).as("%s, %d frames", course, frames).isEqualTo(values);
            }
        }
    }

    @ParameterizedTest(name = "{0} bits, {1} channels")
    @CsvSource({"16, 1", "16, 2", "24, 1", "24, 2"})
    void flacAndFfmpegReadTheSame(int bits, int channels) throws IOException {
        SplittableRandom random = new SplittableRandom(9);
        for (Course course : Course.values()) {
            Path wav = wav(values(course, 20_001, channels, bits, random), channels, 48_000, bits);
            Path flac = folder.resolve("copy.flac");
            FlacCopy.write(wav, flac);
            Tool.run(folder, "flac", "-t", "-s", flac.toString());
            assertThat(Tool.ffmpegSamples(flac)).as("%s", course).isEqualTo(Tool.ffmpegSamples(wav));
        }
    }

    @Test
    void eightBitsAreKeptInSixteen() throws IOException {
        Path wav = Files.write(folder.resolve("take.wav"), WavBytes.riff().fmt(1, 1, 8000, 1, 8).letters("data").u32(4).raw(0, 128, 129, 255).bytes());
        Path flac = folder.resolve("copy.flac");
        assertThat(FlacCopy.write(wav, flac)).isEqualTo(new FlacCopy(16, 0, 0));
        assertThat(decoded(flac, 1, 16)).containsExactly(-32768, 0, 256, 127 * 256);
    }

    @Test
    void floatsAreRoundedToTwentyFourBitsAndCounted() throws IOException {
        float step = 1f / (1 << 23);
        Path wav = Files.write(folder.resolve("take.wav"), WavBytes.riff().fmt(3, 1, 48_000, 4, 32).letters("data").u32(28)
            .floats(0.5f, 0.25f * step, -1.5f, 1f, -1f, Float.NaN, 3 * step).bytes());
        Path flac = folder.resolve("copy.flac");
        FlacCopy copy = FlacCopy.write(wav, flac);
        assertThat(decoded(flac, 1, 24)).containsExactly(1 << 22, 0, -(1 << 23), (1 << 23) - 1, -(1 << 23), 0, 3);
        assertThat(copy.bitsPerSample()).isEqualTo(24);
        assertThat(copy.heldSamples()).as("−1.5 and 1").isEqualTo(2);
        assertThat(copy.roundedSamples()).as("those and a quarter of a step").isEqualTo(3);
    }

    @Test
    void whatComesBeforeDamageIsKept() throws IOException {
        int[] values = values(Course.NOISE, 30_000, 1, 16, new SplittableRandom(3));
        Path whole = folder.resolve("whole.flac");
        FlacCopy.write(wav(values, 1, 48_000, 16), whole);
        byte[] bytes = Files.readAllBytes(whole);
        Arrays.fill(bytes, bytes.length / 2, bytes.length / 2 + 50, (byte) 0);
        Path hurt = Files.write(folder.resolve("hurt.flac"), bytes);
        Path copy = folder.resolve("copy.flac");
        FlacCopy.write(hurt, copy);
        int[] kept = decoded(copy, 1, 16);
        assertThat(kept.length).isBetween(8192, 16_000);
        assertThat(kept).isEqualTo(Arrays.copyOf(values, kept.length));
    }

    @Test
    void moreChannelsThanFlacHoldsAreTold() throws IOException {
        Path wav = wav(new int[20], 10, 48_000, 16);
        assertThatThrownBy(() -> FlacCopy.write(wav, folder.resolve("copy.flac"))).isInstanceOf(SoundProblem.class)
            .hasMessage("keep the sound of " + wav + ": it has 10 channels and FLAC holds 8; export the channels you need");
    }

    @Test
    void aPlaceThatCannotBeWrittenIsTold() throws IOException {
        Path wav = wav(new int[20], 1, 48_000, 16);
        assertThatThrownBy(() -> FlacCopy.write(wav, folder.resolve("none/copy.flac"))).isInstanceOf(SoundProblem.class)
            .hasMessageStartingWith("keep the sound of " + wav + ": no FLAC file could be made (");
    }

    private static int[] values(Course course, int frames, int channels, int bits, SplittableRandom random) {
        int most = (1 << bits - 1) - 1;
        int[] values = new int[frames * channels];
        Arrays.setAll(values, i -> course.value(i / channels, i % channels, most, random));
        return values;
    }

    private Path wav(int[] values, int channels, int rateHz, int bits) throws IOException {
        int bytes = bits / 8;
        WavBytes wav = WavBytes.riff().fmt(1, channels, rateHz, channels * bytes, bits).letters("data").u32((long) values.length * bytes);
        for (int value : values) {
            for (int i = 0; i < bytes; i++) {
                wav.raw(value >> 8 * i);
            }
        }
        return Files.write(folder.resolve("take.wav"), wav.bytes());
    }

    private static int[] decoded(Path flac, int channels, int bits) throws IOException {
        try (FileBytes bytes = new FileBytes(flac)) {
            FrameDecoder decoder = FileKind.decoder(bytes, "copy.flac");
            assertThat(decoder.shape().bitDepth()).isEqualTo(bits);
            float[] samples = new float[1 << 20];
            int filled = 0;
            for (int frames = 0; frames >= 0; frames = decoder.decode(samples, filled, (samples.length - filled) / channels)) {
                filled += frames * channels;
            }
            int[] values = new int[filled];
            for (int i = 0; i < filled; i++) {
                values[i] = (int) (samples[i] * (1 << bits - 1));
            }
            return values;
        }
    }
}
