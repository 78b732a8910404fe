package evenwood.bench;

import evenwood.measure.Blocks;
import evenwood.sound.AudioBlock;

/** Ten seconds of struck tones in blocks of 512 frames, heard over and over: long enough not to be learned by heart. */
public final class Played {
    private static final int SAMPLE_RATE_HZ = 48_000;
    private static final double SECONDS = 10;

    private final AudioBlock[] blocks;
    private int next;

    public Played() {
        float[] sound = Blocks.anySound(1, SAMPLE_RATE_HZ, SECONDS);
        blocks = new AudioBlock[sound.length / AudioBlock.DEFAULT_FRAMES];
        for (int i = 0; i < blocks.length; i++) {
            blocks[i] = new AudioBlock(AudioBlock.DEFAULT_FRAMES);
            System.arraycopy(sound, i * AudioBlock.DEFAULT_FRAMES, blocks[i].samples(), 0, AudioBlock.DEFAULT_FRAMES);
            blocks[i].set((long) i * AudioBlock.DEFAULT_FRAMES, AudioBlock.DEFAULT_FRAMES);
        }
    }

    public AudioBlock nextBlock() {
        next = next + 1 == blocks.length ? 0 : next + 1;
        return blocks[next];
    }
}
