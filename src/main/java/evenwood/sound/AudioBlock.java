package evenwood.sound;

/**
 * A ready-made, reusable stretch of mono sound: what a source fills and a meter hears.
 *
 * <p>Shape: {@link #frames()} samples, full scale ±1.0 (floats beyond it are legal and kept), never NaN or infinite:
 * sources replace those by 0. {@link #startFrame()} counts from the first frame of the take.
 * <p>Thread: one owner at a time; whoever hands it on must not touch it until it comes back. Nothing here allocates
 * but the constructor.
 */
public final class AudioBlock {
    /** 512 frames are 10.7 ms at 48 kHz: the size sources and meters are tuned for. */
    public static final int DEFAULT_FRAMES = 512;

    private final float[] samples;
    private int frames;
    private long startFrame;

    public AudioBlock(int capacityFrames) {
        if (capacityFrames < 1) {
            throw new IllegalArgumentException("audio block: capacityFrames=" + capacityFrames + ", but at least 1 is needed");
        }
        samples = new float[capacityFrames];
    }

    /** A block that holds a copy of the given samples, for tests and short signals. */
    public static AudioBlock of(long startFrame, float... samples) {
        AudioBlock block = new AudioBlock(Math.max(1, samples.length));
        System.arraycopy(samples, 0, block.samples, 0, samples.length);
        block.set(startFrame, samples.length);
        return block;
    }

    public int capacityFrames() {
        return samples.length;
    }

    public int frames() {
        return frames;
    }

    public long startFrame() {
        return startFrame;
    }

    public float sample(int index) {
        return samples[index];
    }

    /** The array itself, for tight loops; only the first {@link #frames()} entries count. */
    public float[] samples() {
        return samples;
    }

    /** Says how many of the samples count, and where in the take the first one stands. */
    public void set(long startFrame, int frames) {
        if (frames < 0 || frames > samples.length) {
            throw new IllegalArgumentException("audio block: frames=" + frames + ", but 0 to " + samples.length + " fit");
        }
        this.startFrame = startFrame;
        this.frames = frames;
    }

    /** Becomes a copy of another block of the same or smaller size. */
    public void copyFrom(AudioBlock other) {
        System.arraycopy(other.samples, 0, samples, 0, other.frames);
        set(other.startFrame, other.frames);
    }
}
