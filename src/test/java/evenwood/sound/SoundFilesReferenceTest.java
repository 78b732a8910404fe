package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What is read agrees with ffmpeg's own decoder, sample by sample, for files written by ffmpeg, sox and flac. The
 * commands are in the test; the sound is noise and a plucked string, so that every bit moves.
 */
class SoundFilesReferenceTest {
    @TempDir Path folder;

    @ParameterizedTest(name = "{0} at {2} Hz, {3} channels")
    @CsvSource({
        "pcm_u8, wav, 8000, 1, 8", "pcm_s16le, wav, 44100, 1, 16", "pcm_s16le, wav, 48000, 2, 16", "pcm_s16le, wav, 192000, 6, 16",
        "pcm_s24le, wav, 48000, 1, 24", "pcm_s24le, wav, 96000, 2, 24", "pcm_s32le, wav, 48000, 1, 32", "pcm_s32le, wav, 44100, 3, 32",
        "pcm_f32le, wav, 48000, 1, 0", "pcm_f32le, wav, 88200, 2, 0", "pcm_f64le, wav, 48000, 2, 0", "pcm_alaw, wav, 8000, 1, 0",
        "pcm_mulaw, wav, 11025, 2, 0",
        "pcm_s8, aiff, 22050, 1, 8", "pcm_s16be, aiff, 44100, 2, 16", "pcm_s24be, aiff, 48000, 1, 24", "pcm_s32be, aiff, 96000, 1, 32",
        "pcm_s16le, aiff, 48000, 1, 16", "pcm_f32be, aiff, 48000, 2, 0", "pcm_f64be, aiff, 44100, 1, 0",
        "pcm_alaw, aiff, 8000, 1, 0", "pcm_mulaw, aiff, 16000, 2, 0",
    })
    void uncompressedFilesByFfmpegAreExact(String codec, String format, int rateHz, int channels, int bitDepth) throws IOException {
        Path file = folder.resolve("take." + format);
        Tool.run(folder, "ffmpeg", "-v", "error", "-y", "-i", plucked(rateHz, channels), "-c:a", codec, file.toString());
        agreesExactly(file, rateHz, channels, bitDepth);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"-b 8, wav, 8", "-b 16, wav, 16", "-b 24, wav, 24", "-b 32 -e signed-integer, wav, 32", "-b 32 -e floating-point, wav, 0",
        "-b 64 -e floating-point, wav, 0", "-b 8 -e a-law, wav, 0", "-b 8 -e mu-law, wav, 0", "-b 8, aiff, 8", "-b 16, aiff, 16",
        "-b 24, aiff, 24", "-b 32, aiff, 32", "-b 16, aifc, 16", "-b 24, aifc, 24", "-b 16, flac, 16", "-b 24, flac, 24"})
    void filesBySoxAreExact(String options, String format, int bitDepth) throws IOException {
        Path file = folder.resolve("take." + format);
        List<String> command = new ArrayList<>(List.of("sox", plucked(44_100, 2)));
        command.addAll(List.of(options.split(" ")));
        command.add(file.toString());
        Tool.run(folder, command.toArray(String[]::new));
        agreesExactly(file, 44_100, 2, bitDepth);
    }

    @Test
    void rf64FilesAreExact() throws IOException {
        Path file = folder.resolve("take.wav");
        Tool.run(folder, "ffmpeg", "-v", "error", "-y", "-i", plucked(48_000, 2), "-c:a", "pcm_s24le", "-rf64", "always",
            "-write_bext", "1", file.toString());
        assertThat(java.nio.file.Files.readAllBytes(file)).startsWith('R', 'F', '6', '4');
        agreesExactly(file, 48_000, 2, 24);
    }

    @Test
    void filesWrittenIntoAPipeAreExact() throws IOException {
        Path byFfmpeg = folder.resolve("ffmpeg.wav");
        Tool.run(folder, byFfmpeg, "ffmpeg", "-v", "error", "-i", plucked(48_000, 1), "-c:a", "pcm_s16le", "-f", "wav", "-");
        agreesExactly(byFfmpeg, 48_000, 1, 16);
        Path bySox = folder.resolve("sox.wav");
        Tool.run(folder, bySox, "sox", plucked(48_000, 1), "-b", "24", "-t", "wav", "-");
        agreesExactly(bySox, 48_000, 1, 24);
    }


    @ParameterizedTest(name = "{0} bits, {2} channels, level {3}")
    @CsvSource({"16, s16, 1, 0", "16, s16, 2, 5", "16, s16, 6, 8", "24, s32, 1, 0", "24, s32, 1, 12", "24, s32, 2, 5", "24, s32, 8, 8"})
    void flacFilesByFfmpegAreExact(int bitDepth, String sampleFormat, int channels, int level) throws IOException {
        Path file = folder.resolve("take.flac");
        Tool.run(folder, "ffmpeg", "-v", "error", "-y", "-i", plucked(96_000, channels), "-c:a", "flac", "-sample_fmt", sampleFormat,
            "-compression_level", Integer.toString(level), file.toString());
        agreesExactly(file, 96_000, channels, bitDepth);
    }

    @ParameterizedTest(name = "flac {0}, {1} bits")
    @CsvSource({"-0, 16", "-5, 16", "-8, 16", "-0, 24", "-5, 24", "-8, 24", "-l 32 -m -b 16384 -r 8 --lax, 24"})
    void flacFilesByTheirOwnEncoderAreExact(String options, int bitDepth) throws IOException {
        Path wav = folder.resolve("source.wav");
        Tool.run(folder, "sox", plucked(44_100, 2), "-b", Integer.toString(bitDepth), "-e", "signed-integer", wav.toString());
        Path file = folder.resolve("take.flac");
        List<String> command = new ArrayList<>(List.of("flac", "-s", "-f", "-o", file.toString()));
        command.addAll(List.of(options.split(" ")));
        command.add(wav.toString());
        Tool.run(folder, command.toArray(String[]::new));
        agreesExactly(file, 44_100, 2, bitDepth);
    }

    /** ffmpeg 5 does not read 32-bit FLAC, so the source of the encoder is the judge. */
    @Test
    void thirtyTwoBitFlacFilesGiveBackWhatWentIn() throws IOException {
        Tool.run(folder, "sox", plucked(48_000, 2), "-b", "32", "-e", "signed-integer", "source.wav");
        Tool.run(folder, "flac", "-s", "-o", "take.flac", "source.wav");
        for (int channel = 1; channel <= 2; channel++) {
            assertThat(Drained.samples(folder.resolve("take.flac"), channel)).isEqualTo(Drained.samples(folder.resolve("source.wav"), channel));
        }
    }

    /**
     * Tolerance: both decoders compute in single precision; 2^−17 is a quarter of a 16-bit step. The length is that of
     * what was encoded (Vorbis I specification, appendix A.2: the last page says where the sound ends); ffmpeg 5 is off
     * by part of a block where one page holds everything.
     */
    @ParameterizedTest(name = "{0} Hz, {1} channels, quality {2}")
    @CsvSource({"8000, 1, 2", "22050, 1, 5", "44100, 2, 3", "48000, 1, 8", "48000, 2, 10", "44100, 1, -1", "48000, 4, 4", "32000, 2, 0",
        "96000, 1, 6", "192000, 2, 5"})
    void vorbisFilesAreAsFfmpegDecodesThem(int rateHz, int channels, int quality) throws IOException {
        Path file = folder.resolve("take.ogg");
        Tool.run(folder, "sox", plucked(rateHz, channels), "-b", "24", "-e", "signed-integer", "source.wav");
        Tool.run(folder, "oggenc", "-Q", "-q", Integer.toString(quality), "-o", file.toString(), "source.wav");
        agreesWithin(Math.pow(2, -17), file, channels, 1370 * rateHz / 1000, 0);
    }

    @ParameterizedTest(name = "{0} seconds, {1} channels")
    @CsvSource({"0.2, 1", "3.7, 2", "3.7, 4"})
    void vorbisFilesByFfmpegEndWhereTheirSoundEnds(double seconds, int channels) throws IOException {
        Path file = folder.resolve("take.ogg");
        Tool.run(folder, "ffmpeg", "-v", "error", "-stream_loop", "3", "-i", plucked(44_100, channels), "-t", Double.toString(seconds), "-c:a",
            "libvorbis", file.toString());
        agreesWithin(Math.pow(2, -17), file, channels, (int) Math.round(seconds * 44_100), 0);
    }

    /** Tolerance: JLayer computes in single precision with an older transform; 2^−15 is one 16-bit step. */
    @ParameterizedTest(name = "{0} Hz, {1} channels, {2}")
    @CsvSource({"8000, 1, -b 32", "11025, 1, -b 32", "12000, 2, -b 48", "16000, 2, -V 4", "22050, 1, -b 64", "24000, 2, -V 2",
        "32000, 2, -b 128", "44100, 2, -V 0", "44100, 2, -b 320", "44100, 1, -b 96", "48000, 2, -b 192", "48000, 1, -V 3 -t"})
    void mp3FilesAreAsFfmpegDecodesThem(int rateHz, int channels, String options) throws IOException {
        Path file = folder.resolve("take.mp3");
        Tool.run(folder, "sox", plucked(rateHz, channels), "-b", "16", "-e", "signed-integer", "source.wav");
        List<String> command = new ArrayList<>(List.of("lame", "--quiet"));
        command.addAll(List.of(options.split(" ")));
        command.addAll(List.of("source.wav", file.toString()));
        Tool.run(folder, command.toArray(String[]::new));
        agreesWithin(Math.pow(2, -15), file, channels, 1370 * rateHz / 1000, 3000);
    }

    private String plucked(int rateHz, int channels) {
        Path file = folder.resolve("plucked.wav");
        List<String> command = new ArrayList<>(List.of("sox", "-R", "-n", "-r", Integer.toString(rateHz), "-b", "64", "-e",
            "floating-point", "-c", Integer.toString(channels), file.toString(), "synth", "1.37"));
        Stream.of("pluck A2", "pluck E3", "whitenoise", "sine 100:3000", "pluck D3", "pinknoise", "sine 440", "pluck G3").limit(channels)
            .forEach(voice -> command.addAll(List.of(voice.split(" "))));
        command.addAll(List.of("gain", "-5"));
        Tool.run(folder, command.toArray(String[]::new));
        return file.toString();
    }

    private static void agreesExactly(Path file, int rateHz, int channels, int bitDepth) throws IOException {
        float[] expected = Tool.ffmpegSamples(file);
        assertThat(expected.length / channels).isGreaterThan(rateHz);
        for (int channel = 1; channel <= channels; channel++) {
            try (SoundFile source = SoundFiles.open(file, channel)) {
                assertThat(source.format()).isEqualTo(new SoundFormat(rateHz, channels, channel, bitDepth));
                assertThat(source.lengthFrames()).hasValue(expected.length / channels);
                assertThat(Drained.samples(source)).as("channel %d", channel).isEqualTo(channel(expected, channel, channels));
            }
        }
    }

    /** Compares what both decoders give, up to the length of what was encoded. */
    private static void agreesWithin(double tolerance, Path file, int channels, int frames, int mostLeadIn) throws IOException {
        float[] expected = Tool.ffmpegSamples(file);
        for (int channel = 1; channel <= channels; channel++) {
            float[] heard = Drained.samples(file, channel);
            float[] theirs = channel(expected, channel, channels);
            int leadIn = mostLeadIn == 0 ? 0 : bestShift(heard, theirs, mostLeadIn);
            assertThat(heard.length - leadIn).as("frames").isBetween(frames, frames + mostLeadIn);
            double worst = 0;
            int both = Math.min(frames, theirs.length);
            assertThat(both).isGreaterThan(frames * 99 / 100);
            for (int i = 0; i < both; i++) {
                worst = Math.max(worst, Math.abs(heard[i + leadIn] - theirs[i]));
            }
            assertThat(worst).as("largest difference in channel %d", channel).isLessThan(tolerance);
        }
    }

    /** How many frames of encoder lead-in the other decoder leaves out: where a second of sound fits best. */
    private static int bestShift(float[] ours, float[] theirs, int mostShift) {
        int best = 0;
        double smallest = Double.MAX_VALUE;
        for (int shift = 0; shift <= mostShift && shift + 2000 < ours.length; shift++) {
            double error = 0;
            for (int i = 1000; i < 2000; i++) {
                double difference = ours[i + shift] - theirs[i];
                error += difference * difference;
            }
            if (error < smallest) {
                smallest = error;
                best = shift;
            }
        }
        return best;
    }

    private static float[] channel(float[] interleaved, int channel, int channels) {
        float[] one = new float[interleaved.length / channels];
        for (int i = 0; i < one.length; i++) {
            one[i] = interleaved[i * channels + channel - 1];
        }
        return one;
    }
}
