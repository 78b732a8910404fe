package evenwood.sound;

import java.io.EOFException;
import java.io.IOException;
import java.util.OptionalLong;

/**
 * Reads FLAC files of 4 to 32 bits, bit-exact (SoundFilesReferenceTest).
 *
 * <p>Source: RFC 9639. Our own because the Java libraries at hand print on standard output or never return on damaged
 * files (docs/dependencies.md). A frame whose check sum is wrong, or a missing one, ends the take with a fault: a hole
 * would be heard as a fault of the rig.
 * <p>Thread: one reader. Allocates only when a longer frame than all before turns up.
 */
final class FlacDecoder implements FrameDecoder {
    private static final int LEFT_AND_SIDE = 8;
    private static final int SIDE_AND_RIGHT = 9;
    private static final int MID_AND_SIDE = 10;
    private static final int FEWEST_BITS = 4;

    private final FileBytes bytes;
    private final FlacStream stream;
    private final FrameShape shape;
    private final FlacBits bits;
    private final FlacSubframe subframe;
    private final float perStep;
    private long[][] samples;
    private int filled;
    private int used;
    private long framesDecoded;
    private long framesBefore;
    private long firstNumber = -1;

    /** Reads from just behind the letters fLaC. */
    FlacDecoder(FileBytes bytes) throws IOException {
        this.bytes = bytes;
        stream = FlacStream.read(bytes);
        FrameShape.check(stream.sampleRateHz(), stream.channels());
        if (stream.bitsPerSample() < FEWEST_BITS) {
            throw new FileFault(SoundTrouble.FILE_BROKEN, "its FLAC header is broken (bitsPerSample=" + stream.bitsPerSample() + ")", FileFault.EXPORT_AGAIN);
        }
        shape = new FrameShape(stream.sampleRateHz(), stream.channels(), stream.bitsPerSample(),
            stream.totalFrames() == 0 ? OptionalLong.empty() : OptionalLong.of(stream.totalFrames()), 0);
        bits = new FlacBits(bytes);
        subframe = new FlacSubframe(bits);
        perStep = 1f / (1L << stream.bitsPerSample() - 1);
        samples = new long[stream.channels()][0];
    }

    @Override
    public FrameShape shape() {
        return shape;
    }

    @Override
    public int decode(float[] interleaved, int offset, int mostFrames) throws IOException {
        if (used == filled && !next()) {
            return -1;
        }
        int frames = Math.min(mostFrames, filled - used);
        for (int channel = 0; channel < samples.length; channel++) {
            long[] from = samples[channel];
            for (int i = used, at = offset + channel; i < used + frames; i++, at += samples.length) {
                interleaved[at] = from[i] * perStep;
            }
        }
        used += frames;
        return frames;
    }

    private boolean next() throws IOException {
        boolean endKnown = stream.totalFrames() > 0;
        if (endKnown ? framesDecoded >= stream.totalFrames() : bytes.remaining() == 0 || bytes.peek(3).equals("TAG")) {
            return false;
        }
        try {
            frame();
        } catch (EOFException e) {
            throw new FileFault(SoundTrouble.FILE_CUT_SHORT, "the FLAC file is cut short", FileFault.EXPORT_AGAIN, e);
        }
        return true;
    }

    private void frame() throws IOException {
        filled = 0;
        used = 0;
        bits.startFrame();
        FlacFrameHeader header = FlacFrameHeader.read(bits, stream);
        if (header.channels() != stream.channels() || header.bitsPerSample() != stream.bitsPerSample()
            || header.sampleRateHz() != stream.sampleRateHz()) {
            throw damaged();
        }
        reserve(header.frames());
        for (int channel = 0; channel < samples.length; channel++) {
            subframe.decode(samples[channel], header.frames(), header.bitsOf(channel));
        }
        if (!bits.frameIsSound() || !follows(header)) {
            throw damaged();
        }
        apart(header.channelWay(), header.frames());
        filled = header.frames();
        framesDecoded += filled;
        framesBefore++;
    }

    /** Frames are numbered, so that one that was lost as a whole is missed too; a cut file may begin at any number. */
    private boolean follows(FlacFrameHeader header) {
        long index = header.variable() ? framesDecoded : framesBefore;
        firstNumber = firstNumber < 0 ? header.number() : firstNumber;
        return header.number() - firstNumber == index;
    }

    private void reserve(int frames) {
        for (int channel = 0; channel < samples.length; channel++) {
            if (samples[channel].length < frames) {
                samples[channel] = new long[frames];
            }
        }
    }

    /** Makes left and right of what was stored as a difference. Source: RFC 9639, 4.2. */
    private void apart(int channelWay, int frames) {
        if (channelWay < LEFT_AND_SIDE) {
            return;
        }
        long[] first = samples[0];
        long[] second = samples[1];
        for (int i = 0; i < frames; i++) {
            switch (channelWay) {
                case LEFT_AND_SIDE -> second[i] = first[i] - second[i];
                case SIDE_AND_RIGHT -> first[i] += second[i];
                case MID_AND_SIDE -> {
                    long twiceMid = first[i] << 1 | second[i] & 1;
                    first[i] = twiceMid + second[i] >> 1;
                    second[i] = first[i] - second[i];
                }
                default -> throw new IllegalStateException("FLAC: channelWay=" + channelWay);
            }
        }
    }

    static FileFault damaged() {
        return new FileFault(SoundTrouble.FILE_BROKEN, "the FLAC stream is damaged", FileFault.EXPORT_AGAIN);
    }
}
