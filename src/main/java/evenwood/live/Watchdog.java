package evenwood.live;

import evenwood.sound.LiveSource;
import evenwood.sound.SoundFormat;
import java.util.concurrent.locks.LockSupport;
import java.util.function.LongSupplier;

/**
 * The watchdog thread: notices a device that blocks, releases it, finds silent losses, and publishes how the take stands.
 *
 * <p>Own thread, because the one that waits for the device cannot watch itself.
 * <p>Thread: {@link #run} and {@link #look} on the watchdog thread (the last look on the stopping one); {@link #state}
 * on any.
 */
final class Watchdog implements Runnable {
    /** A channel that moves more than this carries sound, not noise: −54 dBFS peak to peak. Our choice. */
    private static final float SOUND_SWING = 0.002f;

    private final CaptureLoop capture;
    private final AnalysisLoop analysis;
    private final GapLog gaps;
    private final LiveTiming timing;
    private final LongSupplier nanoTime;
    private final SoundFormat format;
    private final String inputName;
    private final WallClockLoss clockLoss;
    private long lastLookNanos;
    private volatile boolean stopped;
    private volatile LiveState state;

    Watchdog(CaptureLoop capture, AnalysisLoop analysis, GapLog gaps, LiveTiming timing, LongSupplier nanoTime) {
        this.capture = capture;
        this.analysis = analysis;
        this.gaps = gaps;
        this.timing = timing;
        this.nanoTime = nanoTime;
        format = capture.source().format();
        inputName = capture.source().name();
        clockLoss = new WallClockLoss(format.sampleRateHz());
        lastLookNanos = nanoTime.getAsLong();
        publish(lastLookNanos);
    }

    @Override
    public void run() {
        while (!stopped) {
            look();
            LockSupport.parkNanos(this, timing.tickNanos());
        }
    }

    /** One look at everything. */
    void look() {
        long now = nanoTime.getAsLong();
        // Who was held up himself cannot accuse others: the whole machine may have stood still.
        boolean heldUp = now - lastLookNanos > timing.stallNanos();
        lastLookNanos = now;
        if (!heldUp && !capture.isFinished()) {
            checkStall(now);
        }
        checkClock();
        publish(now);
    }

    private void checkStall(long now) {
        boolean running = capture.isRunning();
        long patience = running ? timing.stallNanos() : timing.firstBlockNanos();
        if (capture.isOpen() && capture.silentNanos(now) > patience) {
            capture.abandon("listen: no sound comes from \"" + inputName + "\" any more; check its cable and that it is switched on");
        }
    }

    private void checkClock() {
        if (!capture.isRunning() || capture.openGap(lastLookNanos) != null) {
            clockLoss.restart();
            return;
        }
        long lost = clockLoss.lostFrames(capture.lastFrameNanos(), capture.capturedFrames());
        if (lost > 0) {
            gaps.add(LiveGap.of(LiveGap.Cause.SYSTEM_LOST, capture.position() - lost, lost, format.sampleRateHz()));
        }
    }

    private void publish(long now) {
        LiveGap open = capture.openGap(now);
        GapLog.Picture lost = open == null ? gaps.picture() : GapLog.with(gaps.picture(), open);
        state = new LiveState(phase(), inputName, analysis.heardFrames(), lost.lostFrames(), lost.latest(),
            analysis.presence(), message(open));
    }

    private LiveState.Phase phase() {
        return stopped || capture.isFinished() ? LiveState.Phase.STOPPED
            : capture.isRunning() ? LiveState.Phase.RUNNING : LiveState.Phase.WAITING_FOR_DEVICE;
    }

    private String message(LiveGap open) {
        boolean waiting = !capture.isRunning() && !capture.isFinished();
        if (!waiting && analysis.presence().isDead()) {
            return DeadInputAdvice.words(analysis.presence(), format.channel(), otherChannelWithSound());
        }
        if (!capture.isRunning()) {
            return capture.message();
        }
        return open == null ? "" : "listen: this computer cannot keep up and sound is lost; close other programs";
    }

    private int otherChannelWithSound() {
        int loudest = 0;
        float most = SOUND_SWING;
        if (capture.source() instanceof LiveSource live) {
            for (int channel = 1; channel <= live.format().channels(); channel++) {
                float swing = live.recentSwing(channel);
                if (channel != format.channel() && swing > most) {
                    most = swing;
                    loudest = channel;
                }
            }
        }
        return loudest;
    }

    void stop() {
        stopped = true;
    }

    /** Says how the take ended. [stopping thread, after {@link #run} has ended] */
    void lastLook() {
        publish(nanoTime.getAsLong());
    }

    LiveState state() {
        return state;
    }
}
