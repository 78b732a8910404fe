package evenwood.ui.model;

import evenwood.eq.EqChain;
import evenwood.eq.EqProcessor;
import evenwood.sound.AudioBlock;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.LiveSource;
import evenwood.sound.SoundFormat;
import java.util.List;
import java.util.OptionalLong;
import java.util.concurrent.locks.LockSupport;
import java.util.function.Supplier;

/**
 * The demo take played as if now: each block comes when its time has come, with the moves made so far. Asked for a part of it,
 * the invented player goes on with that part until asked for another.
 *
 * <p>Thread: one reader, which waits; {@link #close} from any.
 */
final class PlayedDemo implements LiveSource {
    static final int SAMPLE_RATE_HZ = 48_000;
    static final long SEED = 1;
    private static final double NANOS = 1e9;
    /** From one part to another without a click. */
    private static final int FADE_FRAMES = SAMPLE_RATE_HZ / 50;
    private static final int GROWTH_FRAMES = 8192;

    /** What the invented player can be asked for. */
    enum Part { ALL, QUIET, SOFT, USUAL, HARD, TUNE }

    private final DemoPerformer performer;
    private final EqProcessor moves;
    private final double pace;
    private final Supplier<Part> asked;
    private final List<Double> starts = DemoPerformer.partStartsSeconds(SEED);
    private final AudioBlock performed = new AudioBlock(GROWTH_FRAMES);
    private final float[] rendered;
    private int renderedFrames;
    private int at;
    private int fadeFrom;
    private int fadeLeft;
    private long given;
    private long startNanos;
    private volatile boolean closed;

    /** @param pace 1 is as fast as it is played; tests hurry */
    PlayedDemo(DemoScenario scenario, EqChain moves, double pace, Supplier<Part> asked) {
        performer = new DemoPerformer(SAMPLE_RATE_HZ, SEED, scenario);
        this.moves = new EqProcessor(moves, SAMPLE_RATE_HZ);
        this.pace = pace;
        this.asked = asked;
        rendered = new float[(int) performer.lengthFrames().orElseThrow()];
    }

    @Override
    public int read(AudioBlock block) {
        if (closed) {
            return -1;
        }
        goWhereAsked();
        int frames = Math.min(block.capacityFrames(), rendered.length - at);
        if (frames <= 0) {
            return -1;
        }
        render(at + frames);
        System.arraycopy(rendered, at, block.samples(), 0, frames);
        fade(block.samples(), frames);
        block.set(given, frames);
        at += frames;
        given += frames;
        moves.process(block);
        waitUntilDue();
        return frames;
    }

    /** Into the part asked for, and back to its start when it is over. */
    private void goWhereAsked() {
        Part part = asked.get();
        if (part == Part.ALL) {
            return;
        }
        int index = part.ordinal() - 1;
        int from = frame(starts.get(index));
        int to = index + 1 < starts.size() ? frame(starts.get(index + 1)) : rendered.length;
        if (at < from || at >= to) {
            fadeFrom = at;
            fadeLeft = FADE_FRAMES;
            at = from;
        }
    }

    private void fade(float[] samples, int frames) {
        for (int i = 0; i < frames && fadeLeft > 0; i++, fadeLeft--, fadeFrom++) {
            float old = fadeFrom < renderedFrames ? rendered[fadeFrom] : 0;
            float share = (float) fadeLeft / FADE_FRAMES;
            samples[i] = share * old + (1 - share) * samples[i];
        }
    }

    private void render(int untilFrame) {
        while (renderedFrames < untilFrame) {
            int frames = performer.read(performed);
            if (frames < 0) {
                return;
            }
            System.arraycopy(performed.samples(), 0, rendered, renderedFrames, frames);
            renderedFrames += frames;
        }
    }

    private static int frame(double seconds) {
        return (int) Math.round(seconds * SAMPLE_RATE_HZ);
    }

    private void waitUntilDue() {
        if (startNanos == 0) {
            startNanos = System.nanoTime();
        }
        long due = startNanos + Math.round(given / (double) SAMPLE_RATE_HZ / pace * NANOS);
        for (long wait = due - System.nanoTime(); wait > 0 && !closed; wait = due - System.nanoTime()) {
            LockSupport.parkNanos(this, wait);
        }
    }

    @Override
    public float recentSwing(int channel) {
        return 1;
    }

    @Override
    public SoundFormat format() {
        return performer.format();
    }

    @Override
    public OptionalLong lengthFrames() {
        return OptionalLong.empty();
    }

    @Override
    public String name() {
        return performer.name();
    }

    @Override
    public void close() {
        closed = true;
    }
}
