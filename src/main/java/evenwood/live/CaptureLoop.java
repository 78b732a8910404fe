package evenwood.live;

import evenwood.sound.AudioBlock;
import evenwood.sound.BlockRing;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * The capture thread: reads the source into one ready-made block, offers it to the ring, and nothing else.
 *
 * <p>When the source fails, or the watchdog {@linkplain #abandon abandons} it, it is opened again and again until it
 * delivers or the take is stopped; what the clock says was missed becomes a gap.
 * <p>Positions count from the first frame of the take with everything lost included, so a step in the start frames of
 * two blocks is exactly what was lost between them.
 * <p>Thread: {@link #run} on the capture thread, which allocates, locks and logs nothing while sound comes in. Each
 * volatile field has one writer but {@code abandoned} and {@code message}, whose last writer wins.
 */
final class CaptureLoop implements Runnable {
    private static final long NONE = -1;
    private static final double NANOS_PER_SECOND = 1e9;

    private final Supplier<? extends SoundSource> opener;
    private final BlockRing ring;
    private final GapLog gaps;
    private final LiveTiming timing;
    private final LongSupplier nanoTime;
    private final int sampleRateHz;
    private final AudioBlock block;

    private volatile SoundSource source;
    private volatile boolean stopping;
    private volatile boolean abandoned;
    private volatile boolean finished;
    private volatile boolean open = true;
    private volatile boolean running;
    private volatile String message;
    private volatile long position;
    private volatile long capturedFrames;
    private volatile long lastFrameNanos;
    private volatile long openedNanos;
    private volatile long overrunStart = NONE;

    CaptureLoop(SoundSource first, Supplier<? extends SoundSource> opener, BlockRing ring, GapLog gaps, LiveTiming timing,
                LongSupplier nanoTime, int blockFrames) {
        this.source = first;
        this.opener = opener;
        this.ring = ring;
        this.gaps = gaps;
        this.timing = timing;
        this.nanoTime = nanoTime;
        sampleRateHz = first.format().sampleRateHz();
        block = new AudioBlock(blockFrames);
        message = "waiting for the first sound from \"" + first.name() + "\"";
        openedNanos = nanoTime.getAsLong();
    }

    @Override
    public void run() {
        try {
            while (!stopping && (pump() || recover())) {
                // All work is in the condition: pump while it lasts, recover when it does not.
            }
        } finally {
            source.close();
            finish();
        }
    }

    /** Moves one block; false when the source delivers no more. */
    private boolean pump() {
        try {
            int frames = source.read(block);
            if (frames > 0) {
                deliver(frames);
                return !abandoned;
            }
            if (frames < 0 && !abandoned) {
                stopping = true;
            }
        } catch (RuntimeException lost) {
            if (!stopping) {
                message = words(lost);
            }
        }
        return false;
    }

    private void deliver(int frames) {
        long now = nanoTime.getAsLong();
        if (!running) {
            resume(now, frames);
        }
        block.set(position, frames);
        boolean fits = ring.offer(block);
        if (!fits && overrunStart == NONE) {
            overrunStart = position;
        } else if (fits && overrunStart != NONE) {
            endOverrun();
        }
        position = position + frames;
        capturedFrames = capturedFrames + frames;
        lastFrameNanos = now;
    }

    private void resume(long now, int frames) {
        if (capturedFrames > 0) {
            LiveGap gap = missedUntil(now, frames);
            gaps.add(gap);
            position = position + gap.lostFrames();
        }
        message = "";
        // Before running is seen, or the watchdog would judge by a time long gone.
        lastFrameNanos = now;
        running = true;
    }

    private void endOverrun() {
        gaps.add(LiveGap.of(LiveGap.Cause.OVERRUN, overrunStart, position - overrunStart, sampleRateHz));
        overrunStart = NONE;
    }

    /** Opens the source again, for ever; false only when the take is stopped or over. */
    private boolean recover() {
        if (stopping) {
            return false;
        }
        open = false;
        running = false;
        source.close();
        if (overrunStart != NONE) {
            endOverrun();
        }
        while (!stopping) {
            LockSupport.parkNanos(this, timing.retryNanos());
            if (!stopping && reopen()) {
                return true;
            }
        }
        return false;
    }

    private boolean reopen() {
        try {
            SoundSource opened = opener.get();
            openedNanos = nanoTime.getAsLong();
            abandoned = false;
            source = opened;
            open = true;
            return true;
        } catch (RuntimeException notThere) {
            message = words(notThere);
            return false;
        }
    }

    /** A driver may fail with anything at all; the take goes on waiting all the same. */
    private static String words(RuntimeException failure) {
        return failure instanceof SoundProblem ? failure.getMessage()
            : "listen: the input failed (" + failure + "); unplug it and plug it in again";
    }

    private LiveGap missedUntil(long now, int alreadyThere) {
        long missed = Math.round((now - lastFrameNanos) / NANOS_PER_SECOND * sampleRateHz) - alreadyThere;
        return LiveGap.of(LiveGap.Cause.DEVICE_AWAY, position, Math.max(0, missed), sampleRateHz);
    }

    private void finish() {
        if (overrunStart != NONE) {
            endOverrun();
        } else if (!running && capturedFrames > 0) {
            gaps.add(missedUntil(nanoTime.getAsLong(), 0));
        }
        running = false;
        finished = true;
    }

    /** Ends the reading; frames already captured stay in the ring. [any thread] */
    void stop() {
        stopping = true;
        source.close();
    }

    /** Gives up the source that blocks, and says why; the capture thread then opens it anew. [watchdog] */
    void abandon(String why) {
        message = why;
        abandoned = true;
        source.close();
    }

    /** Nothing more will be offered. */
    boolean isFinished() {
        return finished;
    }

    boolean isRunning() {
        return running && !abandoned;
    }

    /** How long nothing has come, counted from the last frame or the last opening. */
    long silentNanos(long now) {
        return now - (running ? lastFrameNanos : openedNanos);
    }

    /** There is a source that could deliver; false while it is being opened again. */
    boolean isOpen() {
        return open;
    }

    /** Where the next frame will stand, everything lost included. */
    long position() {
        return position;
    }

    long lastFrameNanos() {
        return lastFrameNanos;
    }

    long capturedFrames() {
        return capturedFrames;
    }

    SoundSource source() {
        return source;
    }

    String message() {
        return message;
    }

    /** The loss that is going on now, or null. [any thread] */
    LiveGap openGap(long now) {
        long start = overrunStart;
        if (start != NONE) {
            return LiveGap.of(LiveGap.Cause.OVERRUN, start, Math.max(0, position - start), sampleRateHz);
        }
        return isRunning() || finished || capturedFrames == 0 ? null : missedUntil(now, 0);
    }
}
