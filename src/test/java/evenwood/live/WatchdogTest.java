package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.sound.BlockRing;
import evenwood.sound.SoundProblem;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;

/** The watchdog looks when the test says so, and the clock is the test's. */
class WatchdogTest {
    private static final int RATE_HZ = 48_000;
    private static final LiveTiming TIMING = new LiveTiming(millis(500), millis(3_000), 1, millis(100), 1);

    private final AtomicLong clockNanos = new AtomicLong(77);
    private final GapLog gaps = new GapLog();
    private final BlockRing ring = new BlockRing(64, 512);
    private final ScriptedSource device = new ScriptedSource(RATE_HZ);
    private final CaptureLoop capture = new CaptureLoop(device, () -> {
        throw SoundProblem.atStart("listen: the input \"stage box\" is not there");
    }, ring, gaps, TIMING, clockNanos::get, 512);
    private final AnalysisLoop analysis = new AnalysisLoop(ring, block -> { }, capture::isFinished, () -> { }, 1, RATE_HZ, 512);
    private final Watchdog watchdog = new Watchdog(capture, analysis, gaps, TIMING, clockNanos::get);
    private final Thread captureThread = new Thread(capture);

    @AfterEach
    void end() throws InterruptedException {
        capture.stop();
        captureThread.join();
    }

    @Test
    void beforeTheFirstSoundItSaysThatItWaits() {
        assertThat(watchdog.state().phase()).isEqualTo(LiveState.Phase.WAITING_FOR_DEVICE);
        assertThat(watchdog.state().message()).isEqualTo("waiting for the first sound from \"stage box\"");
        assertThat(watchdog.state().presence()).isEqualTo(SignalReading.NOT_YET_KNOWN);
    }

    @Test
    void aDeviceThatBlocksIsToldAndClosedWithinASecond() {
        runningDevice();
        lookEvery100msFor(500);
        assertThat(watchdog.state().phase()).as("a burst may be half a second late").isEqualTo(LiveState.Phase.RUNNING);
        assertThat(device.closed).isFalse();
        lookEvery100msFor(200);
        assertThat(watchdog.state().phase()).isEqualTo(LiveState.Phase.WAITING_FOR_DEVICE);
        assertThat(device.closed).isTrue();
        assertThat(watchdog.state().message()).isIn(
            "listen: no sound comes from \"stage box\" any more; check its cable and that it is switched on",
            "listen: the input \"stage box\" is not there");
    }

    @Test
    void aGapThatIsStillOpenGrows() {
        runningDevice();
        lookEvery100msFor(1_500);
        assertThat(watchdog.state().lostFrames()).isEqualTo(RATE_HZ * 3 / 2);
        lookEvery100msFor(1_000);
        assertThat(watchdog.state().lostFrames()).isEqualTo(RATE_HZ * 5 / 2);
        assertThat(watchdog.state().gaps()).containsExactly(
            new LiveGap(LiveGap.Cause.DEVICE_AWAY, 512.0 / RATE_HZ, 2.5, RATE_HZ * 5 / 2));
    }

    @Test
    void aDeviceThatNeverDeliversIsOpenedAgainAfterThreeSeconds() {
        captureThread.start();
        lookEvery100msFor(3_000);
        assertThat(device.closed).isFalse();
        lookEvery100msFor(200);
        assertThat(device.closed).isTrue();
        assertThat(watchdog.state().lostFrames()).as("the take had not begun").isZero();
    }

    @Test
    void whoWasHeldUpHimselfAccusesNobody() {
        runningDevice();
        clockNanos.addAndGet(TimeUnit.SECONDS.toNanos(30));
        watchdog.look();
        assertThat(device.closed).as("the whole machine stood still").isFalse();
        lookEvery100msFor(100);
        assertThat(device.closed).as("and this time it did not").isTrue();
    }

    @Test
    void soundTheSystemLostIsFoundByTheClock() {
        captureThread.start();
        deliverFor(50);
        clockNanos.addAndGet(millis(400));
        deliverFor(30);
        assertThat(watchdog.state().phase()).isEqualTo(LiveState.Phase.RUNNING);
        assertThat(watchdog.state().gaps()).extracting(LiveGap::cause).containsExactly(LiveGap.Cause.SYSTEM_LOST);
        assertThat(watchdog.state().lostFrames()).isEqualTo(RATE_HZ * 4 / 10);
    }

    @Test
    void anInputOfZerosIsToldWithTheChannelThatHasSound() {
        captureThread.start();
        for (int i = 0; i < 20; i++) {
            deliver(512 * 10, 0);
            analysis.drain();
        }
        watchdog.look();
        assertThat(watchdog.state().presence()).isEqualTo(SignalReading.EXACT_ZEROS);
        assertThat(watchdog.state().message()).startsWith("channel 1 delivers nothing but exact zeros; check the mute switch");
        device.swingOfChannel(2, 0.001f);
        watchdog.look();
        assertThat(watchdog.state().message()).as("noise is no sound").contains("mute switch");
        device.swingOfChannel(2, 0.2f);
        watchdog.look();
        assertThat(watchdog.state().message())
            .isEqualTo("channel 1 delivers nothing but exact zeros, but channel 2 carries sound; choose that channel");
        deliver(512, 0.1f);
        analysis.drain();
        watchdog.look();
        assertThat(watchdog.state().message()).isEmpty();
    }

    @Test
    void anAnalysisThatCannotKeepUpIsToldWhileItLasts() {
        captureThread.start();
        deliver(512 * 70, 0.1f);
        watchdog.look();
        assertThat(watchdog.state().lostFrames()).isEqualTo(6 * 512);
        assertThat(watchdog.state().message()).isEqualTo(
            "listen: this computer cannot keep up and sound is lost; close other programs");
        analysis.drain();
        deliver(512, 0.1f);
        watchdog.look();
        assertThat(watchdog.state().message()).isEmpty();
        assertThat(watchdog.state().gaps()).extracting(LiveGap::cause).containsExactly(LiveGap.Cause.OVERRUN);
        assertThat(watchdog.state().lostFrames()).isEqualTo(6 * 512);
    }

    private void runningDevice() {
        captureThread.start();
        deliver(512, 0.1f);
        watchdog.look();
        assertThat(watchdog.state().phase()).isEqualTo(LiveState.Phase.RUNNING);
    }

    private void deliver(int frames, float value) {
        long wanted = capture.capturedFrames() + frames;
        for (int left = frames; left > 0; left -= 512) {
            device.delivers(Math.min(512, left), value);
        }
        Waiting.until("the device was read", () -> capture.capturedFrames() == wanted && watchedFrames() == wanted);
    }

    /** The last thing the capture loop writes for a block is its time; then it waits for the next one. */
    private long watchedFrames() {
        return captureThread.getState() == Thread.State.WAITING ? capture.capturedFrames() : -1;
    }

    private void deliverFor(int ticks) {
        for (int i = 0; i < ticks; i++) {
            clockNanos.addAndGet(millis(100));
            deliver(RATE_HZ / 10, 0.1f * (i % 5));
            analysis.drain();
            watchdog.look();
        }
    }

    private void lookEvery100msFor(long durationMs) {
        for (long ms = 0; ms < durationMs; ms += 100) {
            clockNanos.addAndGet(millis(100));
            watchdog.look();
        }
    }

    private static long millis(long ms) {
        return TimeUnit.MILLISECONDS.toNanos(ms);
    }
}
