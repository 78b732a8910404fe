package evenwood.sound;

import java.io.IOException;
import java.util.OptionalLong;

/**
 * Reads uncompressed frames from one stretch of a file.
 *
 * <p>In: where the samples lie and how they are written. Out: frames, until the stretch or the file is over; a last
 * frame that is not whole is dropped.
 * <p>Thread: one reader; {@link #decode} allocates nothing (SoundFileCostTest).
 */
final class PcmDecoder implements FrameDecoder {
    /** Programs that write into a pipe claim nearly 2 GiB or more, because they cannot come back (seen from sox). */
    private static final long STREAMED_BYTES = 0x7FFF_0000L;
    /** What more than 32 bits were needed for was counted and not made up. */
    private static final long MOST_STREAMED_BYTES = 0xFFFF_FFFFL;

    private final FileBytes bytes;
    private final FrameShape shape;
    private final PcmCoding coding;
    private final int bytesPerFrame;
    private long framesLeft;

    private PcmDecoder(FileBytes bytes, FrameShape shape, PcmCoding coding, long frames) {
        this.bytes = bytes;
        this.shape = shape;
        this.coding = coding;
        bytesPerFrame = shape.channels() * coding.bytes();
        framesLeft = frames;
    }

    /** Makes the decoder for a described stretch of the file; refuses one that holds not a single frame. */
    static PcmDecoder of(FileBytes bytes, PcmStretch stretch) throws IOException {
        FrameShape.check(stretch.sampleRateHz(), stretch.channels());
        int bytesPerFrame = stretch.channels() * stretch.coding().bytes();
        long framesThere = Math.max(0, bytes.length() - stretch.firstByte()) / bytesPerFrame;
        long framesClaimed = Math.min(stretch.bytes() / bytesPerFrame, stretch.mostFrames());
        long frames = Math.min(framesThere, framesClaimed);
        if (frames < 1) {
            throw FileFault.noSound();
        }
        boolean streamed = stretch.bytes() == PcmStretch.TO_THE_END || stretch.bytes() >= STREAMED_BYTES && stretch.bytes() <= MOST_STREAMED_BYTES;
        bytes.seek(stretch.firstByte());
        return new PcmDecoder(bytes, new FrameShape((int) stretch.sampleRateHz(), stretch.channels(),
            stretch.coding().bitDepth(stretch.validBits()), OptionalLong.of(frames),
            streamed ? 0 : framesClaimed - frames), stretch.coding(), frames);
    }

    @Override
    public FrameShape shape() {
        return shape;
    }

    @Override
    public int decode(float[] interleaved, int offset, int mostFrames) throws IOException {
        int frames = (int) Math.min(framesLeft, mostFrames);
        int atHand = bytes.have(bytesPerFrame) / bytesPerFrame;
        if (frames == 0 || atHand == 0) {
            framesLeft = 0;
            return -1;
        }
        frames = Math.min(frames, atHand);
        coding.decode(bytes.buffer(), bytes.at(), interleaved, offset, frames * shape.channels());
        bytes.advance(frames * bytesPerFrame);
        framesLeft -= frames;
        return frames;
    }
}
