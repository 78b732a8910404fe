package evenwood.live;

import evenwood.sound.AudioBlock;
import evenwood.sound.LiveSource;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundProblem;
import java.util.Arrays;
import java.util.OptionalLong;
import java.util.concurrent.LinkedBlockingDeque;

/** A device that does what a test tells it: delivers frames, blocks while it was told nothing, goes away, ends. */
class ScriptedSource implements LiveSource {
    private enum Event { GONE, CLOSED, ENDS }

    private final LinkedBlockingDeque<Object> script = new LinkedBlockingDeque<>();
    private final SoundFormat format;
    private final float[] swings = new float[8];
    volatile boolean closed;
    private volatile boolean readerWaits;

    ScriptedSource(int sampleRateHz) {
        format = new SoundFormat(sampleRateHz, 2, 1, 24);
    }

    /** A block of so many frames, all of one value. */
    ScriptedSource delivers(int frames, float value) {
        float[] samples = new float[frames];
        Arrays.fill(samples, value);
        script.add(samples);
        return this;
    }

    /** Blocks that count up, so that a doubled, lost or swapped one shows. */
    ScriptedSource counts(int from, int blocks, int frames) {
        for (int n = from; n < from + blocks; n++) {
            delivers(frames, n);
        }
        return this;
    }

    /** From here on nothing, at once and for ever, as a line whose server was killed. */
    ScriptedSource goesAway() {
        script.add(Event.GONE);
        return this;
    }

    ScriptedSource ends() {
        script.add(Event.ENDS);
        return this;
    }

    ScriptedSource swingOfChannel(int channel, float swing) {
        swings[channel - 1] = swing;
        return this;
    }

    @Override
    public int read(AudioBlock block) {
        Object next = take();
        if (next instanceof float[] samples) {
            System.arraycopy(samples, 0, block.samples(), 0, samples.length);
            block.set(0, samples.length);
            return samples.length;
        }
        script.addFirst(next);
        if (next == Event.GONE) {
            throw SoundProblem.midway("the device is gone", null);
        }
        return -1;
    }

    /** All that was scripted has been read, and the reader waits for more. */
    boolean isUsedUp() {
        return script.isEmpty() && readerWaits;
    }

    private Object take() {
        readerWaits = script.isEmpty();
        try {
            return script.take();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Override
    public void close() {
        closed = true;
        script.addFirst(Event.CLOSED);
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
        return "stage box";
    }

    @Override
    public float recentSwing(int channel) {
        return swings[channel - 1];
    }
}
