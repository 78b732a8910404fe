package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Broken files of every kind: whatever is done to a good one, reading it ends, with sound or with a problem in words,
 * and never with another exception, a hang, a number that is none, or a heap of memory.
 */
@Timeout(value = 5, unit = TimeUnit.MINUTES, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class SoundFilesFuzzTest {
    private static final int MUTANTS = 600;
    /** Half a second of sound can never grow to more than this, whatever its header claims. */
    private static final int MOST_FRAMES = 2_000_000;
    private static final long MOST_BYTES = 16L << 20;

    @TempDir Path folder;

    @ParameterizedTest(name = "{0}, seed {1}")
    @CsvSource({"good.wav, 1", "good8.wav, 2", "goodf.wav, 3", "good64.wav, 4", "good.aiff, 5", "good.aifc, 6", "good.flac, 7",
        "good.ogg, 8", "good.mp3, 9", "goodmono.mp3, 10"})
    void mutantsEndInSoundOrInWords(String name, long seed) throws IOException {
        byte[] good = good(name);
        SplittableRandom random = new SplittableRandom(seed);
        int[] ends = new int[3];
        for (int mutant = 0; mutant < MUTANTS; mutant++) {
            ends[end(mutated(good, name, random), name, seed + "/" + mutant)]++;
        }
        assertThat(ends[0]).as("mutants that were read to their end").isPositive();
        assertThat(ends[1]).as("mutants refused at the start").isPositive();
    }

    /** Half a second of noise; WAV is made here, the rest by the programs of the machine. */
    private byte[] good(String name) throws IOException {
        int[] samples = new SplittableRandom(1).ints(2 * 8000, -9000, 9000).toArray();
        Files.write(folder.resolve("good.wav"), WavBytes.pcm16(16_000, 2, samples));
        switch (name) {
            case "good.wav" -> { }
            case "good8.wav" -> Files.write(folder.resolve(name), WavBytes.riff().extensible(1, 1, 16_000, 1, 8, 8).letters("JUNK").u32(5)
                .raw(1, 2, 3, 4, 5, 0).letters("data").u32(8000).raw(Arrays.copyOf(samples, 8000)).bytes());
            case "goodf.wav" -> writeWith(WavWriter.Coding.FLOAT_32, WavFileHeader.MOST_RIFF_BYTES, folder.resolve(name));
            case "good64.wav" -> writeWith(WavWriter.Coding.INTEGER_24, 0, folder.resolve(name));
            case "good.aiff", "good.aifc" -> Tool.run(folder, "sox", "good.wav", "-b", "24", name);
            case "good.flac" -> Tool.run(folder, "flac", "-s", "-f", "-o", name, "good.wav");
            case "good.ogg" -> Tool.run(folder, "oggenc", "-Q", "-t", "Title", "-o", name, "good.wav");
            case "good.mp3" -> Tool.run(folder, "lame", "--quiet", "--tt", "Title", "--add-id3v2", "good.wav", name);
            default -> Tool.run(folder, "lame", "--quiet", "-a", "-b", "32", "good.wav", name);
        }
        return Files.readAllBytes(folder.resolve(name));
    }

    private static void writeWith(WavWriter.Coding coding, long mostRiffBytes, Path file) {
        float[] samples = new float[8000];
        SplittableRandom random = new SplittableRandom(2);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) random.nextDouble(-0.5, 0.5);
        }
        try (WavWriter writer = new WavWriter(file, 16_000, coding, false, mostRiffBytes)) {
            writer.write(samples, samples.length);
        }
    }

    private byte[] mutated(byte[] good, String name, SplittableRandom random) {
        byte[] bytes = good.clone();
        int hits = 1 + random.nextInt(8);
        for (int hit = 0; hit < hits; hit++) {
            int reach = random.nextInt(3) == 0 ? bytes.length : Math.min(bytes.length, 300);
            int at = random.nextInt(reach);
            switch (random.nextInt(6)) {
                case 0 -> bytes[at] ^= (byte) (1 << random.nextInt(8));
                case 1 -> bytes[at] = (byte) random.nextInt(256);
                case 2 -> Arrays.fill(bytes, at, Math.min(bytes.length, at + 4), (byte) 0xFF);
                case 3 -> Arrays.fill(bytes, at, Math.min(bytes.length, at + random.nextInt(64)), (byte) 0);
                case 4 -> bytes = Arrays.copyOf(bytes, Math.max(1, random.nextInt(bytes.length)));
                default -> bytes = withoutSome(bytes, at, random.nextInt(40));
            }
        }
        return name.endsWith("ogg") && random.nextInt(3) > 0 ? withChecksums(bytes) : bytes;
    }

    private static byte[] withoutSome(byte[] bytes, int at, int count) {
        int end = Math.min(bytes.length - 1, at + count);
        byte[] shorter = new byte[bytes.length - Math.max(0, end - at)];
        System.arraycopy(bytes, 0, shorter, 0, at);
        System.arraycopy(bytes, Math.max(at, end), shorter, at, bytes.length - Math.max(at, end));
        return shorter;
    }

    /** Repairs the checksum of every Ogg page, so that the damage reaches the decoder behind it. Source: RFC 3533, 6. */
    private static byte[] withChecksums(byte[] bytes) {
        for (int page : pages(bytes)) {
            int segments = bytes[page + 26] & 0xFF;
            int end = page + 27 + segments;
            for (int i = 0; i < segments && page + 27 + i < bytes.length; i++) {
                end += bytes[page + 27 + i] & 0xFF;
            }
            Arrays.fill(bytes, page + 22, page + 26, (byte) 0);
            int sum = 0;
            for (int i = page; i < Math.min(end, bytes.length); i++) {
                sum ^= (bytes[i] & 0xFF) << 24;
                for (int bit = 0; bit < 8; bit++) {
                    sum = sum << 1 ^ (sum < 0 ? 0x04C1_1DB7 : 0);
                }
            }
            for (int i = 0; i < 4; i++) {
                bytes[page + 22 + i] = (byte) (sum >> 8 * i);
            }
        }
        return bytes;
    }

    private static List<Integer> pages(byte[] bytes) {
        List<Integer> found = new ArrayList<>();
        for (int i = 0; i + 27 < bytes.length; i++) {
            if (bytes[i] == 'O' && bytes[i + 1] == 'g' && bytes[i + 2] == 'g' && bytes[i + 3] == 'S') {
                found.add(i);
            }
        }
        return found;
    }

    /** 0 for sound to the end, 1 for a problem at the start, 2 for one midway. */
    private int end(byte[] bytes, String name, String mutant) throws IOException {
        Path file = Files.write(folder.resolve("mutant-" + name), bytes);
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadAllocatedBytes();
        int end = heard(file, mutant);
        assertThat(threads.getCurrentThreadAllocatedBytes() - before).as("bytes allocated for mutant %s", mutant).isLessThan(MOST_BYTES);
        return end;
    }

    private static int heard(Path file, String mutant) {
        AudioBlock block = new AudioBlock(700);
        long frames = 0;
        try (SoundFile source = SoundFiles.open(file, 0)) {
            for (int n = source.read(block); n > 0; n = source.read(block)) {
                frames += n;
                assertThat(frames).as("frames of mutant %s", mutant).isLessThan(MOST_FRAMES);
                for (int i = 0; i < n; i++) {
                    if (!Float.isFinite(block.sample(i))) {
                        throw new AssertionError("mutant " + mutant + " gave " + block.sample(i));
                    }
                }
            }
            return 0;
        } catch (SoundProblem problem) {
            assertThat(problem.getMessage()).as("mutant %s", mutant).matches("(open|read) [^\n]+: [^\n;]+(;|;? what came before is kept,) [^\n]+");
            assertThat(problem.getMessage()).doesNotContain("null");
            assertThat(problem.isMidway()).isEqualTo(frames > 0);
            return frames > 0 ? 2 : 1;
        } catch (RuntimeException e) {
            throw new AssertionError("mutant " + mutant + " of " + file.getFileName() + " threw " + e, e);
        }
    }
}
