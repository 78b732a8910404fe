package evenwood.ui.model;

import evenwood.live.BlockListener;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * The last half minute of a live take, so that the moves can be heard on it. It never leaves the memory.
 *
 * <p>Thread: the analysis thread fills it; {@link #source} copies what there is, from any.
 */
final class KeptSound implements BlockListener {
    private static final double KEPT_SECONDS = 30;

    private SoundFormat format;
    private float[] ring = new float[0];
    private long frames;

    synchronized void begin(SoundFormat newFormat) {
        format = newFormat;
        int wanted = (int) (KEPT_SECONDS * newFormat.sampleRateHz());
        if (ring.length != wanted) {
            ring = new float[wanted];
        }
        frames = 0;
    }

    synchronized void clear() {
        frames = 0;
    }

    @Override
    public synchronized void accept(AudioBlock block) {
        for (int i = 0; i < block.frames(); i++) {
            ring[(int) ((frames + i) % ring.length)] = block.sample(i);
        }
        frames += block.frames();
    }

    /** Empty when nothing was kept. */
    synchronized Optional<SoundSource> source() {
        if (frames == 0) {
            return Optional.empty();
        }
        int count = (int) Math.min(frames, ring.length);
        float[] copy = new float[count];
        for (int i = 0; i < count; i++) {
            copy[i] = ring[(int) ((frames - count + i) % ring.length)];
        }
        return Optional.of(new Copy(SoundFormat.mono(format.sampleRateHz()), copy));
    }

    private static final class Copy implements SoundSource {
        private final SoundFormat format;
        private final float[] samples;
        private int at;

        Copy(SoundFormat format, float[] samples) {
            this.format = format;
            this.samples = samples;
        }

        @Override
        public int read(AudioBlock block) {
            int count = Math.min(block.capacityFrames(), samples.length - at);
            if (count <= 0) {
                return -1;
            }
            System.arraycopy(samples, at, block.samples(), 0, count);
            block.set(at, count);
            at += count;
            return count;
        }

        @Override
        public SoundFormat format() {
            return format;
        }

        @Override
        public OptionalLong lengthFrames() {
            return OptionalLong.of(samples.length);
        }

        @Override
        public String name() {
            return "live";
        }

        @Override
        public void close() { }
    }
}
