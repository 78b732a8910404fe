package evenwood.live;

import evenwood.sound.AudioBlock;
import evenwood.sound.BlockRing;
import evenwood.sound.SoundSource;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;
import java.util.function.Supplier;

/**
 * One live take: a source, the threads that carry its sound to a listener, and how it stands.
 *
 * <p>In: an open source, and a way to open it again. Out: every block to the {@link BlockListener} on the analysis
 * thread; {@link #state()} for everybody else.
 * <p>How: capture thread → ring → analysis thread, with a watchdog beside them ({@code docs/how-sound-flows.md}). A device
 * that fails is opened again until {@link #stop()}.
 * <p>Limits: the ring holds two seconds; a loss is noticed within 0.7 s.
 * <p>Thread: any. {@link #stop()} waits for what was captured to be heard.
 */
public final class LiveTake implements AutoCloseable {
    private static final double RING_SECONDS = 2;
    private static final long CAPTURE_END_MS = 2_000;
    private static final long WATCHDOG_END_MS = 2_000;

    private final CaptureLoop capture;
    private final AnalysisLoop analysis;
    private final Watchdog watchdog;
    private final Thread captureThread;
    private final Thread analysisThread;
    private final Thread watchdogThread;
    private volatile boolean givenUp;
    private boolean over;

    LiveTake(SoundSource first, Supplier<? extends SoundSource> opener, BlockListener listener, LiveTiming timing,
             LongSupplier nanoTime, BlockRing ring) {
        int rateHz = first.format().sampleRateHz();
        GapLog gaps = new GapLog();
        capture = new CaptureLoop(first, opener, ring, gaps, timing, nanoTime, AudioBlock.DEFAULT_FRAMES);
        analysis = new AnalysisLoop(ring, listener, () -> capture.isFinished() || givenUp, capture::stop, timing.pollNanos(),
            rateHz, AudioBlock.DEFAULT_FRAMES);
        watchdog = new Watchdog(capture, analysis, gaps, timing, nanoTime);
        captureThread = named("capture", capture, Thread.MAX_PRIORITY);
        analysisThread = named("analysis", analysis, Thread.NORM_PRIORITY);
        watchdogThread = named("watchdog", watchdog, Thread.NORM_PRIORITY);
    }

    /**
     * Starts to listen.
     *
     * @param first    an open source; its format is what the listener must be built for
     * @param opener   opens it again in the same format, or throws {@link evenwood.sound.SoundProblem}
     * @param listener hears every block
     */
    public static LiveTake start(SoundSource first, Supplier<? extends SoundSource> opener, BlockListener listener) {
        BlockRing ring = BlockRing.holdingSeconds(RING_SECONDS, first.format().sampleRateHz(), AudioBlock.DEFAULT_FRAMES);
        LiveTake take = new LiveTake(first, opener, listener, LiveTiming.USUAL, System::nanoTime, ring);
        take.begin();
        return take;
    }

    void begin() {
        analysisThread.start();
        captureThread.start();
        watchdogThread.start();
    }

    /** The newest picture, at most a tenth of a second old; the last one after the end. */
    public LiveState state() {
        return watchdog.state();
    }

    /**
     * Ends the take: no more is captured, and all that was is heard before this returns. Again: nothing happens. Called
     * by the listener itself it only ends the capture.
     *
     * @throws RuntimeException what the listener threw, if that ended the take
     */
    public void stop() {
        capture.stop();
        LockSupport.unpark(captureThread);
        if (Thread.currentThread() != analysisThread) {
            end();
        }
    }

    private synchronized void end() {
        if (over) {
            return;
        }
        over = true;
        join(captureThread, CAPTURE_END_MS);
        // A driver that does not even let go of a closed line must not keep the player from leaving.
        givenUp = true;
        join(analysisThread, 0);
        watchdog.stop();
        LockSupport.unpark(watchdogThread);
        join(watchdogThread, WATCHDOG_END_MS);
        watchdog.lastLook();
        rethrow(analysis.failure());
    }

    @Override
    public void close() {
        stop();
    }

    private static void rethrow(Throwable failure) {
        if (failure instanceof RuntimeException runtime) {
            throw runtime;
        }
        if (failure instanceof Error error) {
            throw error;
        }
    }

    private static void join(Thread thread, long atMostMs) {
        boolean interrupted = false;
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(atMostMs);
        while (thread.isAlive()) {
            long leftMs = atMostMs == 0 ? 0 : TimeUnit.NANOSECONDS.toMillis(end - System.nanoTime());
            if (leftMs < 0 || atMostMs > 0 && leftMs == 0) {
                break;
            }
            try {
                thread.join(leftMs);
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    private static Thread named(String name, Runnable loop, int priority) {
        Thread thread = new Thread(loop, "evenwood-" + name);
        thread.setDaemon(true);
        thread.setPriority(priority);
        return thread;
    }
}
