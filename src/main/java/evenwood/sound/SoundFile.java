package evenwood.sound;

import java.io.IOException;
import java.util.Locale;
import java.util.OptionalLong;

/**
 * One channel of a sound file, from its start to its end, in constant memory.
 *
 * <p>Out: blocks filled to their capacity except the last. Floats that are no numbers (NaN, infinite, out of all
 * proportion) become 0 and are counted; floats beyond full scale stay. The peak of every channel is watched on the way, so that a take on the wrong
 * channel can be told from a silent one.
 * <p>Thread: one reader. {@link #read} of an uncompressed file allocates nothing (SoundFileCostTest).
 */
public final class SoundFile implements SoundSource {
    private static final int FRAMES_AT_A_TIME = 1024;

    private final String name;
    private final FileBytes bytes;
    private final FrameDecoder decoder;
    private final SoundFormat format;
    private final ChannelSplit split;
    private final float[] interleaved;
    private long positionFrames;
    private boolean over;
    private SoundProblem problem;

    SoundFile(String name, FileBytes bytes, FrameDecoder decoder, int channel) {
        this.name = name;
        this.bytes = bytes;
        this.decoder = decoder;
        FrameShape shape = decoder.shape();
        format = new SoundFormat(shape.sampleRateHz(), shape.channels(), channel, shape.bitDepth());
        split = new ChannelSplit(shape.channels(), channel);
        interleaved = new float[shape.channels() == 1 ? 0 : FRAMES_AT_A_TIME * shape.channels()];
    }

    @Override
    public SoundFormat format() {
        return format;
    }

    @Override
    public OptionalLong lengthFrames() {
        return decoder.shape().lengthFrames();
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int read(AudioBlock block) {
        int filled = 0;
        while (filled < block.capacityFrames() && !over) {
            filled = fill(block, filled);
        }
        block.set(positionFrames, filled);
        positionFrames += filled;
        if (problem != null && filled == 0) {
            throw problem;
        }
        return filled > 0 ? filled : -1;
    }

    /** What was read before a fault is handed out first; the fault comes with the next call. */
    private int fill(AudioBlock block, int filled) {
        try {
            int frames = decode(block, filled);
            over = frames < 0;
            if (over && positionFrames + filled == 0) {
                throw FileFault.noSound();
            }
            if (over && missingFrames() > 0) {
                throw new FileFault(SoundTrouble.FILE_CUT_SHORT, "the file is cut short", FileFault.EXPORT_AGAIN);
            }
            return filled + Math.max(0, frames);
        } catch (IOException e) {
            over = true;
            problem = problem(e, positionFrames + filled);
            return filled;
        }
    }

    private int decode(AudioBlock block, int filled) throws IOException {
        int wanted = block.capacityFrames() - filled;
        if (format.channels() == 1) {
            int frames = decoder.decode(block.samples(), filled, wanted);
            split.clean(block.samples(), filled, Math.max(0, frames));
            return frames;
        }
        int frames = decoder.decode(interleaved, 0, Math.min(wanted, FRAMES_AT_A_TIME));
        split.take(interleaved, Math.max(0, frames), block.samples(), filled);
        return frames;
    }

    private SoundProblem problem(IOException fault, long heardFrames) {
        String what = fault instanceof FileFault ? fault.getMessage() : "it cannot be read on (" + fault.getMessage() + ")";
        String advice = fault instanceof FileFault known ? known.advice() : "check the disk or copy the file again";
        SoundTrouble trouble = fault instanceof FileFault known ? known.trouble() : SoundTrouble.FILE_UNREADABLE;
        if (heardFrames == 0) {
            return SoundProblem.atStart("open " + name + ": " + what + "; " + advice, fault).of(trouble, name);
        }
        double seconds = (double) heardFrames / format.sampleRateHz();
        String words = String.format(Locale.ROOT, "read %s: %s after %.2f s; what came before is kept, %s", name, what, seconds, advice);
        return (fault instanceof FileFault ? SoundProblem.damaged(words, fault) : SoundProblem.midway(words, fault)).of(trouble, name).after(seconds);
    }

    /** How many samples of the chosen channel were no numbers so far and were heard as 0. */
    public long replacedSamples() {
        return split.replacedSamples();
    }

    /** How many frames the header of an uncompressed file promises beyond its end: more than 0 when it was cut short. */
    public long missingFrames() {
        return decoder.shape().missingFrames();
    }

    /** The highest sample of every channel so far. */
    public ChannelPeaks channelPeaks() {
        return split.peaks();
    }

    @Override
    public void close() {
        try {
            bytes.close();
        } catch (IOException e) {
            throw new IllegalStateException("close " + name, e);
        }
    }
}
