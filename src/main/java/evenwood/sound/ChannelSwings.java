package evenwood.sound;

import java.util.concurrent.atomic.AtomicIntegerArray;

/**
 * How far each channel of a device has moved lately, so that a silent one can be told "the sound is on channel 2".
 *
 * <p>In: the swing of every channel in each block. Out: per channel the largest block swing of the last complete
 * stretch of half a second, full scale 1.0; 0 before the first stretch is complete.
 * <p>Thread: the capture thread writes, any thread reads; nothing waits or allocates.
 */
final class ChannelSwings {
    private static final double STRETCH_SECONDS = 0.5;

    private final long stretchFrames;
    private final float[] growing;
    private final AtomicIntegerArray published;
    private long frames;

    ChannelSwings(int channels, int sampleRateHz) {
        stretchFrames = Math.round(STRETCH_SECONDS * sampleRateHz);
        growing = new float[channels];
        published = new AtomicIntegerArray(channels);
    }

    /** Hears all channels, side by side, of one block. [capture thread] */
    void accept(float[] interleaved, int blockFrames) {
        for (int c = 0; c < growing.length; c++) {
            growing[c] = Math.max(growing[c], swing(interleaved, blockFrames, c));
        }
        frames += blockFrames;
        if (frames >= stretchFrames) {
            publish();
        }
    }

    private float swing(float[] interleaved, int blockFrames, int first) {
        float lowest = Float.POSITIVE_INFINITY;
        float highest = Float.NEGATIVE_INFINITY;
        for (int i = first; i < blockFrames * growing.length; i += growing.length) {
            lowest = Math.min(lowest, interleaved[i]);
            highest = Math.max(highest, interleaved[i]);
        }
        return highest - lowest;
    }

    float recent(int channel) {
        return Float.intBitsToFloat(published.get(channel - 1));
    }

    private void publish() {
        for (int c = 0; c < growing.length; c++) {
            published.set(c, Float.floatToRawIntBits(growing[c]));
            growing[c] = 0;
        }
        frames = 0;
    }
}
