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

    /** Hears all channels of one block. [capture thread] */
    void accept(LinePcm pcm, byte[] bytes, int blockFrames) {
        for (int c = 0; c < growing.length; c++) {
            growing[c] = Math.max(growing[c], pcm.swing(bytes, blockFrames, c + 1));
        }
        frames += blockFrames;
        if (frames >= stretchFrames) {
            publish();
        }
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
