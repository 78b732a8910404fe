package evenwood.sound;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.SequenceInputStream;
import java.util.OptionalLong;
import org.jflac.FLACDecoder;
import org.jflac.FrameListener;
import org.jflac.frame.Frame;
import org.jflac.frame.Header;
import org.jflac.metadata.Metadata;

/**
 * Reads FLAC files of 4 to 24 bits with jFLAC, bit-exact (SoundFilesReferenceTest).
 *
 * <p>How: the metadata blocks are walked here, and only the stream description is handed on, so that a picture in the
 * file costs no memory. jFLAC goes on after damage, with silence; here every complaint of it ends the take, because a
 * hole would be heard as a fault of the rig. Source of the layout: RFC 9639, 8.1 and 8.2.
 * <p>Thread: one reader.
 */
final class FlacDecoder implements FrameDecoder, FrameListener {
    private static final int STREAMINFO_BYTES = 34;
    private static final int MOST_BITS = 24;

    private final FrameShape shape;
    private final int bitsPerSample;
    private final FLACDecoder decoder;
    private final float perStep;
    private boolean complained;
    private long framesDelivered;
    private Frame frame;
    private int usedOfFrame;

    /** Reads from just behind the letters fLaC. */
    FlacDecoder(FileBytes bytes) throws IOException {
        byte[] streamInfo = streamInfo(bytes);
        long packed = 0;
        for (int i = 10; i < 18; i++) {
            packed = packed << 8 | streamInfo[i] & 0xFF;
        }
        long sampleRateHz = packed >>> 44;
        int channels = (int) (packed >>> 41 & 7) + 1;
        bitsPerSample = (int) (packed >>> 36 & 31) + 1;
        long totalFrames = packed & 0xF_FFFF_FFFFL;
        FrameShape.check(sampleRateHz, channels);
        if (bitsPerSample > MOST_BITS) {
            throw new FileFault("its samples have " + bitsPerSample + " bits, but up to " + MOST_BITS
                + " are read from a FLAC file", "convert it to WAV");
        }
        shape = new FrameShape((int) sampleRateHz, channels, bitsPerSample,
            totalFrames == 0 ? OptionalLong.empty() : OptionalLong.of(totalFrames));
        perStep = 1f / (1 << bitsPerSample - 1);
        decoder = new FLACDecoder(new SequenceInputStream(new ByteArrayInputStream(streamInfoOnly(streamInfo)), bytes.stream()));
        decoder.addFrameListener(this);
        decoder.readMetadata();
    }

    private static byte[] streamInfo(FileBytes bytes) throws IOException {
        byte[] streamInfo = null;
        boolean last = false;
        while (!last) {
            int kind = bytes.u8();
            int size = bytes.u8() << 16 | bytes.u16BigEndian();
            last = (kind & 0x80) != 0;
            long next = bytes.position() + size;
            if (streamInfo == null) {
                if ((kind & 0x7F) != 0 || size != STREAMINFO_BYTES) {
                    throw new FileFault("its FLAC header is broken (no stream description)", FileFault.EXPORT_AGAIN);
                }
                streamInfo = bytes.bytes(STREAMINFO_BYTES);
            }
            bytes.seek(next);
        }
        return streamInfo;
    }

    private static byte[] streamInfoOnly(byte[] streamInfo) {
        byte[] all = new byte[8 + STREAMINFO_BYTES];
        System.arraycopy(new byte[] {'f', 'L', 'a', 'C', (byte) 0x80, 0, 0, STREAMINFO_BYTES}, 0, all, 0, 8);
        System.arraycopy(streamInfo, 0, all, 8, STREAMINFO_BYTES);
        return all;
    }

    @Override
    public FrameShape shape() {
        return shape;
    }

    @Override
    public int decode(float[] interleaved, int offset, int mostFrames) throws IOException {
        if (frame == null || usedOfFrame == frame.header.blockSize) {
            if (shape.lengthFrames().isPresent() && framesDelivered >= shape.lengthFrames().getAsLong() || !next()) {
                return -1;
            }
        }
        int frames = Math.min(mostFrames, frame.header.blockSize - usedOfFrame);
        for (int channel = 0; channel < shape.channels(); channel++) {
            int[] decoded = decoder.getChannelData()[channel].getOutput();
            for (int i = 0, at = offset + channel; i < frames; i++, at += shape.channels()) {
                interleaved[at] = decoded[usedOfFrame + i] * perStep;
            }
        }
        usedOfFrame += frames;
        framesDelivered += frames;
        return frames;
    }

    private boolean next() throws IOException {
        try {
            frame = decoder.readNextFrame();
        } catch (RuntimeException | IOException e) {
            throw damaged(e);
        }
        usedOfFrame = 0;
        if (frame == null && !complained) {
            if (shape.lengthFrames().isPresent()) {
                throw new FileFault("the FLAC file is cut short", FileFault.EXPORT_AGAIN);
            }
            return false;
        }
        if (complained || !fits(frame.header)) {
            throw damaged(null);
        }
        return true;
    }

    private boolean fits(Header header) {
        return header.channels == shape.channels() && header.bitsPerSample == bitsPerSample
            && header.sampleRate == shape.sampleRateHz() && header.blockSize > 0;
    }

    private static FileFault damaged(Exception cause) {
        return new FileFault("the FLAC stream is damaged", FileFault.EXPORT_AGAIN, cause);
    }

    @Override
    public void processMetadata(Metadata metadata) { }

    @Override
    public void processFrame(Frame decoded) { }

    @Override
    public void processError(String message) {
        complained = true;
    }
}
