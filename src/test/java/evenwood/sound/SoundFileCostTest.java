package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.management.ThreadMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reading and writing take constant memory, and nothing at all per block. */
class SoundFileCostTest {
    private static final int WARM_UP_BLOCKS = 4_000;
    private static final int COUNTED_BLOCKS = 10_000;

    @TempDir Path folder;

    @Test
    void readingAndWritingAWavFileAllocateNothingPerBlock() {
        ThreadMXBean threads = (ThreadMXBean) ManagementFactory.getThreadMXBean();
        Path file = folder.resolve("take.wav");
        AudioBlock block = new AudioBlock(512);
        block.set(0, 512);
        try (WavWriter writer = WavWriter.createDithered(file, 48_000, WavWriter.Coding.INTEGER_24)) {
            write(writer, block, WARM_UP_BLOCKS);
            long before = threads.getCurrentThreadAllocatedBytes();
            write(writer, block, COUNTED_BLOCKS);
            assertThat(threads.getCurrentThreadAllocatedBytes() - before).as("bytes allocated by writing").isZero();
        }
        try (SoundFile source = SoundFiles.open(file, 1)) {
            assertThat(read(source, block, WARM_UP_BLOCKS)).isEqualTo(WARM_UP_BLOCKS * 512);
            long before = threads.getCurrentThreadAllocatedBytes();
            int frames = read(source, block, COUNTED_BLOCKS);
            assertThat(threads.getCurrentThreadAllocatedBytes() - before).as("bytes allocated by reading").isZero();
            assertThat(frames).isEqualTo(COUNTED_BLOCKS * 512);
        }
    }

    private static void write(WavWriter writer, AudioBlock block, int blocks) {
        for (int i = 0; i < blocks; i++) {
            writer.write(block);
        }
    }

    private static int read(SoundSource source, AudioBlock block, int blocks) {
        int frames = 0;
        for (int i = 0; i < blocks; i++) {
            frames += source.read(block);
        }
        return frames;
    }
}
