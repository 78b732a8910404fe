package evenwood.sound;

import java.util.ArrayList;
import java.util.List;

/**
 * Takes the heard channel out of frames with all channels side by side, and watches the others.
 *
 * <p>Samples that are no numbers (NaN, infinite) or 180 dB over full scale, as no sound is and no power can be made of,
 * become 0; those of the heard channel are counted.
 * <p>Thread: one owner; {@link #take} allocates nothing.
 */
final class ChannelSplit {
    private static final float NO_SOUND = 1e9f;

    private final int channels;
    private final int heard;
    private final float[] peaks;
    private long replacedSamples;

    ChannelSplit(int channels, int channel) {
        this.channels = channels;
        heard = channel - 1;
        peaks = new float[channels];
    }

    static boolean isSound(float sample) {
        return Math.abs(sample) < NO_SOUND;
    }

    /** Reads frames from the start of one array and writes the heard channel into the other from an index on. */
    void take(float[] interleaved, int frames, float[] mono, int offset) {
        for (int channel = 0; channel < channels; channel++) {
            if (channel != heard) {
                watch(interleaved, frames, channel);
            }
        }
        for (int frame = 0, i = heard; frame < frames; frame++, i += channels) {
            mono[offset + frame] = interleaved[i];
        }
        clean(mono, offset, frames);
    }

    /** The heard channel, already where it belongs: makes it clean and watches it. */
    void clean(float[] mono, int offset, int frames) {
        float peak = peaks[heard];
        for (int i = offset; i < offset + frames; i++) {
            float magnitude = Math.abs(mono[i]);
            if (!isSound(magnitude)) {
                mono[i] = 0;
                replacedSamples++;
            } else if (magnitude > peak) {
                peak = magnitude;
            }
        }
        peaks[heard] = peak;
    }

    private void watch(float[] interleaved, int frames, int channel) {
        float peak = peaks[channel];
        for (int frame = 0, i = channel; frame < frames; frame++, i += channels) {
            float magnitude = Math.abs(interleaved[i]);
            if (magnitude > peak && magnitude < NO_SOUND) {
                peak = magnitude;
            }
        }
        peaks[channel] = peak;
    }

    ChannelPeaks peaks() {
        List<Double> dbfs = new ArrayList<>();
        for (float peak : peaks) {
            dbfs.add(Decibels.ofAmplitude(peak));
        }
        return new ChannelPeaks(heard + 1, dbfs);
    }

    long replacedSamples() {
        return replacedSamples;
    }
}
