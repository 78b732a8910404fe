package evenwood.sound;

import java.io.IOException;
import javazoom.jl.decoder.Bitstream;
import javazoom.jl.decoder.Decoder;
import javazoom.jl.decoder.Header;
import javazoom.jl.decoder.JavaLayerException;
import javazoom.jl.decoder.Obuffer;

/**
 * Reads MP3 files (and MPEG layers 1 and 2) with JLayer.
 *
 * <p>Out: floats as decoded, before JLayer would cut them to 16 bits, so that peaks beyond full scale stay. The
 * encoder's lead-in of some 1100 frames is part of the take. Frames may change between mono and stereo; the take keeps
 * the channels of its first frame.
 * <p>Thread: one reader.
 */
final class Mp3Decoder extends Obuffer implements FrameDecoder {
    /** JLayer's own full scale (Decoder, "scalefactor"). */
    private static final float JLAYER_FULL_SCALE = 32_700;

    private final Mp3Frames frames;
    private final FrameShape shape;
    private final float[][] decoded = new float[MAXCHANNELS][OBUFFERSIZE];
    private final int[] filled = new int[MAXCHANNELS];
    private int used;
    private int channelsNow;
    private Bitstream bits;
    private Decoder decoder;

    Mp3Decoder(Mp3Frames frames) throws IOException {
        this.frames = frames;
        FrameShape.check(frames.first().sampleRateHz(), frames.first().channels());
        shape = new FrameShape(frames.first().sampleRateHz(), frames.first().channels(), 0, frames.lengthFrames(), 0);
    }

    @Override
    public FrameShape shape() {
        return shape;
    }

    @Override
    public int decode(float[] interleaved, int offset, int mostFrames) throws IOException {
        while (used == filled[0]) {
            if (!next()) {
                return -1;
            }
        }
        int count = Math.min(mostFrames, filled[0] - used);
        for (int channel = 0; channel < shape.channels(); channel++) {
            for (int i = 0, at = offset + channel; i < count; i++, at += shape.channels()) {
                interleaved[at] = sample(channel, used + i);
            }
        }
        used += count;
        return count;
    }

    private float sample(int channel, int index) {
        if (channelsNow > shape.channels()) {
            return (decoded[0][index] + decoded[1][index]) / (2 * JLAYER_FULL_SCALE);
        }
        return decoded[Math.min(channel, channelsNow - 1)][index] / JLAYER_FULL_SCALE;
    }

    private boolean next() throws IOException {
        Mp3FrameHeader header = frames.next();
        if (header == null) {
            return false;
        }
        if (header.channels() != channelsNow) {
            channelsNow = header.channels();
            bits = new Bitstream(frames);
            decoder = new Decoder();
            decoder.setOutputBuffer(this);
        }
        used = 0;
        clear_buffer();
        try {
            Header known = bits.readFrame();
            if (known == null) {
                throw Mp3Frames.damaged(null);
            }
            decoder.decodeFrame(known, bits);
            bits.closeFrame();
        } catch (JavaLayerException | RuntimeException e) {
            throw Mp3Frames.damaged(e);
        }
        return true;
    }

    @Override
    public void appendSamples(int channel, float[] samples) {
        int room = Math.min(samples.length, OBUFFERSIZE - filled[channel]);
        System.arraycopy(samples, 0, decoded[channel], filled[channel], room);
        filled[channel] += room;
    }

    @Override
    public void append(int channel, short value) {
        throw new IllegalStateException("MP3 decoder: a 16-bit sample came, but floats were asked for");
    }

    @Override
    public void clear_buffer() {
        filled[0] = 0;
        filled[1] = 0;
    }

    @Override
    public void write_buffer(int ignored) { }

    @Override
    public void close() { }

    @Override
    public void set_stop_flag() { }
}
