package evenwood.sound;

import java.util.OptionalLong;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.TargetDataLine;

/**
 * One channel of an open input line, as it comes in.
 *
 * <p>In: a line that was opened and started. Out: blocks as full as the block's capacity, one per read.
 * <p>Limits: a line whose device went away does not say so; it returns nothing at once, for ever. That is told as
 * {@link SoundProblem} midway. A line that merely blocks must be closed by somebody else (the watchdog of a live take).
 * <p>Thread: one reader, which allocates nothing; {@link #close} from any thread releases it.
 */
public final class LineSource implements LiveSource {
    private final TargetDataLine line;
    private final PcmCoding coding;
    private final SoundFormat format;
    private final String name;
    private final ChannelSwings swings;
    private byte[] bytes = new byte[0];
    private float[] interleaved = new float[0];
    private long position;
    private volatile boolean closed;

    LineSource(TargetDataLine line, AudioFormat lineFormat, int channel, String name) {
        this.line = line;
        this.name = name;
        coding = LineFormats.coding(lineFormat);
        format = new SoundFormat(Math.round(lineFormat.getSampleRate()), lineFormat.getChannels(), channel,
            lineFormat.getSampleSizeInBits());
        swings = new ChannelSwings(format.channels(), format.sampleRateHz());
    }

    @Override
    public SoundFormat format() {
        return format;
    }

    @Override
    public OptionalLong lengthFrames() {
        return OptionalLong.empty();
    }

    @Override
    public String name() {
        return name;
    }

    @Override
    public int read(AudioBlock block) {
        makeRoom(block.capacityFrames());
        int frames = line.read(bytes, 0, block.capacityFrames() * frameBytes()) / frameBytes();
        if (frames <= 0) {
            if (closed) {
                return -1;
            }
            throw SoundProblem.midway("listen: the input \"" + name + "\" delivers nothing any more; "
                + "check its cable and that it is switched on", null).of(SoundTrouble.INPUT_SILENT, name);
        }
        coding.decode(bytes, 0, interleaved, 0, frames * format.channels());
        swings.accept(interleaved, frames);
        float[] samples = block.samples();
        for (int frame = 0, i = format.channel() - 1; frame < frames; frame++, i += format.channels()) {
            samples[frame] = interleaved[i];
        }
        block.set(position, frames);
        position += frames;
        return frames;
    }

    private int frameBytes() {
        return format.channels() * coding.bytes();
    }

    /** Once, unless blocks of another size come. */
    private void makeRoom(int frames) {
        if (interleaved.length < frames * format.channels()) {
            interleaved = new float[frames * format.channels()];
            bytes = new byte[frames * frameBytes() + FileBytes.SLACK_BYTES];
        }
    }

    @Override
    public float recentSwing(int channel) {
        return swings.recent(channel);
    }

    @Override
    public void close() {
        closed = true;
        line.close();
    }
}
