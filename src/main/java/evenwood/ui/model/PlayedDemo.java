package evenwood.ui.model;

import evenwood.eq.EqChain;
import evenwood.eq.EqProcessor;
import evenwood.sound.AudioBlock;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.LiveSource;
import evenwood.sound.SoundFormat;
import java.util.OptionalLong;
import java.util.concurrent.locks.LockSupport;

/**
 * The demo take played as if now: each block comes when its time has come, with the moves made so far.
 *
 * <p>Thread: one reader, which waits; {@link #close} from any.
 */
final class PlayedDemo implements LiveSource {
    static final int SAMPLE_RATE_HZ = 48_000;
    static final long SEED = 1;
    private static final double NANOS = 1e9;

    private final DemoPerformer performer;
    private final EqProcessor moves;
    private final double pace;
    private long startNanos;
    private volatile boolean closed;

    /** @param pace 1 is as fast as it is played; tests hurry */
    PlayedDemo(DemoScenario scenario, EqChain moves, double pace) {
        performer = new DemoPerformer(SAMPLE_RATE_HZ, SEED, scenario);
        this.moves = new EqProcessor(moves, SAMPLE_RATE_HZ);
        this.pace = pace;
    }

    @Override
    public int read(AudioBlock block) {
        if (closed) {
            return -1;
        }
        int frames = performer.read(block);
        if (frames < 0) {
            return frames;
        }
        moves.process(block);
        if (startNanos == 0) {
            startNanos = System.nanoTime();
        }
        long due = startNanos + Math.round((block.startFrame() + frames) / (double) SAMPLE_RATE_HZ / pace * NANOS);
        for (long wait = due - System.nanoTime(); wait > 0 && !closed; wait = due - System.nanoTime()) {
            LockSupport.parkNanos(this, wait);
        }
        return frames;
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
        return performer.lengthFrames();
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
