package evenwood.sound;

import java.io.Closeable;
import java.io.IOException;
import java.nio.file.Path;
import net.sourceforge.javaflacencoder.EncodingConfiguration;
import net.sourceforge.javaflacencoder.FLACEncoder;
import net.sourceforge.javaflacencoder.FLACFileOutputStream;
import net.sourceforge.javaflacencoder.StreamConfiguration;

/**
 * Writes whole-number samples to a FLAC file as they come, in constant memory.
 *
 * <p>How: fixed predictors only. On instruments the searched ones save no half percent more and take ten times as long, and the
 * encoder's own choice between them prints on standard error. A last block of a few samples goes unpacked: the encoder cannot
 * predict one.
 * <p>Thread: one owner. The encoder starts no threads of its own.
 */
final class FlacWriter implements Closeable {
    static final int MOST_CHANNELS = StreamConfiguration.MAX_CHANNEL_COUNT;
    private static final int BLOCK_FRAMES = 4096;
    private static final int FEWEST_FRAMES_PREDICTED = 32;

    private final FLACEncoder encoder = new FLACEncoder();
    private final FLACFileOutputStream file;

    FlacWriter(Path path, int sampleRateHz, int channels, int bitsPerSample) throws IOException {
        encoder.setThreadCount(1); // 0 would be right, but then it stumbles; threads are only used by a call that is not made here
        encoder.setStreamConfiguration(new StreamConfiguration(channels, BLOCK_FRAMES, BLOCK_FRAMES, sampleRateHz, bitsPerSample));
        predict(EncodingConfiguration.SubframeType.FIXED);
        file = new FLACFileOutputStream(path.toFile());
        encoder.setOutputStream(file);
        encoder.openFLACStream();
    }

    private void predict(EncodingConfiguration.SubframeType how) {
        EncodingConfiguration configuration = new EncodingConfiguration();
        configuration.setSubframeType(how);
        encoder.setEncodingConfiguration(configuration);
    }

    /** Appends frames, all channels side by side. */
    void write(int[] interleaved, int frames) throws IOException {
        encoder.addSamples(interleaved, frames);
        encoder.encodeSamples(encoder.fullBlockSamplesAvailableToEncode(), false);
    }

    /** Writes what is left and the finished header; the file is not whole before. */
    @Override
    public void close() throws IOException {
        try (file) {
            encoder.encodeSamples(encoder.fullBlockSamplesAvailableToEncode(), false);
            if (encoder.samplesAvailableToEncode() < FEWEST_FRAMES_PREDICTED) {
                predict(EncodingConfiguration.SubframeType.VERBATIM);
            }
            encoder.encodeSamples(encoder.samplesAvailableToEncode(), true);
        }
    }
}
