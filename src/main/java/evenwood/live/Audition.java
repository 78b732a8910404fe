package evenwood.live;

import evenwood.eq.EqChain;
import evenwood.eq.EqProcessor;
import evenwood.eq.Rendering;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundSink;
import evenwood.sound.SoundSource;

/**
 * A take heard with and without the moves, switched while it plays, both equally loud.
 *
 * <p>How: both versions are computed all the time, so that a switch has no history; it fades over {@value #FADE_MS} ms.
 * <p>Thread: {@link #playNext} by one; {@link #toggle} and {@link #isMoved} by any.
 */
public final class Audition {
    private static final int BLOCK_FRAMES = 512;
    private static final double FADE_MS = 15;

    private final SoundSource source;
    private final SoundSink sink;
    private final EqProcessor moved;
    private final EqProcessor plain;
    private final AudioBlock block = new AudioBlock(BLOCK_FRAMES);
    private final float[] other = new float[BLOCK_FRAMES];
    private final float fadeStep;
    private volatile boolean wantsMoved = true;
    /** 1 is with the moves, 0 without. */
    private float share = 1;

    public Audition(SoundSource source, EqChain change, Rendering levels, SoundSink sink) {
        this.source = source;
        this.sink = sink;
        int rateHz = source.format().sampleRateHz();
        moved = new EqProcessor(change.withGainDb(change.gainDb() + levels.afterDb()), rateHz);
        plain = new EqProcessor(EqChain.FLAT.withGainDb(levels.beforeDb()), rateHz);
        fadeStep = (float) (1000 / (FADE_MS * rateHz));
    }

    /** With the moves, or without: the other one from now on. */
    public void toggle() {
        wantsMoved = !wantsMoved;
    }

    /** Whether the moves are heard. */
    public boolean isMoved() {
        return wantsMoved;
    }

    /** Plays the next few milliseconds. @return false when the take is over */
    public boolean playNext() {
        int frames = source.read(block);
        if (frames < 0) {
            return false;
        }
        System.arraycopy(block.samples(), 0, other, 0, frames);
        plain.process(other, frames);
        moved.process(block);
        float[] samples = block.samples();
        float goal = wantsMoved ? 1 : 0;
        for (int i = 0; i < frames; i++) {
            share += Math.max(-fadeStep, Math.min(fadeStep, goal - share));
            samples[i] = share * samples[i] + (1 - share) * other[i];
        }
        sink.write(block);
        return true;
    }
}
