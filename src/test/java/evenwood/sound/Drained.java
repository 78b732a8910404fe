package evenwood.sound;

import java.nio.file.Path;
import java.util.Arrays;

/** Reads a whole source into memory, for tests with short takes. */
final class Drained {
    private Drained() { }

    static float[] samples(SoundSource source) {
        return samples(source, AudioBlock.DEFAULT_FRAMES);
    }

    static float[] samples(SoundSource source, int blockFrames) {
        float[] all = new float[1 << 12];
        AudioBlock block = new AudioBlock(blockFrames);
        int filled = 0;
        for (int n = source.read(block); n > 0; n = source.read(block)) {
            while (filled + n > all.length) {
                all = Arrays.copyOf(all, 2 * all.length);
            }
            if (block.startFrame() != filled || block.frames() != n) {
                throw new AssertionError("block starts at " + block.startFrame() + " with " + block.frames() + " frames, but "
                    + filled + " were read and " + n + " announced");
            }
            System.arraycopy(block.samples(), 0, all, filled, n);
            filled += n;
        }
        return Arrays.copyOf(all, filled);
    }

    static float[] samples(Path file, int channel) {
        try (SoundFile source = SoundFiles.open(file, channel)) {
            return samples(source);
        }
    }
}
