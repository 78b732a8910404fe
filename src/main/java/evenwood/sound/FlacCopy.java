package evenwood.sound;

import java.io.IOException;
import java.nio.file.Path;

/**
 * The sound of a file of any kind as a FLAC file, with all its channels.
 *
 * <p>How: whole numbers of up to 16 bits become 16-bit FLAC and everything else 24-bit, sample for sample. What does not stand on a
 * step of 24 bits (floating point, 32 bits, lossy kinds) is rounded to the nearest; what lies beyond full scale is held there; what
 * is no number becomes 0, as it is heard.
 * Afterwards the FLAC file is decoded again and must give the same samples, because a kept sound cannot be recorded anew.
 * A source that is damaged midway is copied up to there.
 *
 * @param bitsPerSample  16 or 24
 * @param roundedSamples how many samples, of all channels, are not exactly what they were
 * @param heldSamples    how many of those lay beyond full scale
 */
public record FlacCopy(int bitsPerSample, long roundedSamples, long heldSamples) {
    private static final int FRAMES_AT_A_TIME = 4096;
    private static final long PRIME = 1_099_511_628_211L;

    /**
     * Writes the copy, in place of a file of that name.
     *
     * @throws SoundProblem if the source cannot be read, has more channels than FLAC, or the copy cannot be written
     */
    public static FlacCopy write(Path sound, Path flac) {
        try (FileBytes bytes = new FileBytes(sound)) {
            FrameDecoder source = FileKind.decoder(bytes, sound.toString());
            FrameShape shape = source.shape();
            if (shape.channels() > FlacWriter.MOST_CHANNELS) {
                throw SoundProblem.atStart("keep the sound of " + sound + ": it has " + shape.channels() + " channels and FLAC holds "
                    + FlacWriter.MOST_CHANNELS + "; export the channels you need");
            }
            Copying copying = new Copying(shape);
            try (FlacWriter writer = new FlacWriter(flac, shape.sampleRateHz(), shape.channels(), copying.bits)) {
                copying.copy(source, writer);
            }
            copying.mustBeIn(flac);
            return new FlacCopy(copying.bits, copying.rounded, copying.held);
        } catch (IOException problem) {
            throw SoundProblem.midway("keep the sound of " + sound + ": no FLAC file could be made (" + problem.getMessage()
                + "); check the free space of the disk", problem);
        }
    }

    /** One copy on its way. */
    private static final class Copying {
        private final int channels;
        private final int bits;
        private final double steps;
        private final float[] samples;
        private final int[] values;
        private long rounded;
        private long held;
        /** Folds all values into one number, so that nothing need be kept to compare. */
        private long written = 1;

        Copying(FrameShape shape) {
            channels = shape.channels();
            bits = shape.bitDepth() >= 1 && shape.bitDepth() <= 16 ? 16 : 24;
            steps = Math.pow(2, bits - 1);
            samples = new float[FRAMES_AT_A_TIME * channels];
            values = new int[samples.length];
        }

        void copy(FrameDecoder source, FlacWriter writer) throws IOException {
            for (int frames = next(source); frames > 0; frames = next(source)) {
                for (int i = 0; i < frames * channels; i++) {
                    values[i] = value(samples[i]);
                }
                written = folded(written, frames);
                writer.write(values, frames);
            }
        }

        /** What comes before damage is worth keeping. */
        private int next(FrameDecoder source) throws IOException {
            try {
                return source.decode(samples, 0, FRAMES_AT_A_TIME);
            } catch (FileFault damaged) {
                return -1;
            }
        }

        private int value(float sample) {
            double wanted = ChannelSplit.isSound(sample) ? sample * steps : 0;
            double nearest = Math.rint(wanted);
            double there = Math.max(-steps, Math.min(steps - 1, nearest));
            held += nearest == there ? 0 : 1;
            rounded += wanted == there ? 0 : 1;
            return (int) there;
        }

        private long folded(long before, int frames) {
            long fold = before;
            for (int i = 0; i < frames * channels; i++) {
                fold = fold * PRIME + values[i];
            }
            return fold;
        }

        void mustBeIn(Path flac) throws IOException {
            long read = 1;
            try (FileBytes bytes = new FileBytes(flac)) {
                FrameDecoder copy = FileKind.decoder(bytes, flac.toString());
                for (int frames = copy.decode(samples, 0, FRAMES_AT_A_TIME); frames > 0; frames = copy.decode(samples, 0, FRAMES_AT_A_TIME)) {
                    for (int i = 0; i < frames * channels; i++) {
                        values[i] = (int) (samples[i] * steps);
                    }
                    read = folded(read, frames);
                }
            }
            if (read != written) {
                throw new IOException("what was written does not sound the same");
            }
        }
    }
}
