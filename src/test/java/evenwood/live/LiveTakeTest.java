package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenwood.sound.AudioBlock;
import evenwood.sound.BlockRing;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** All three threads, no device: the fake one does what the script says, and the clock is the test's. */
@Timeout(60)
class LiveTakeTest {
    private static final int RATE_HZ = 48_000;
    private static final long MS = TimeUnit.MILLISECONDS.toNanos(1);
    private static final LiveTiming QUICK = new LiveTiming(500 * MS, 3_000 * MS, MS / 10, MS, MS / 10);

    private final AtomicLong clockNanos = new AtomicLong();
    private final List<Float> heard = Collections.synchronizedList(new ArrayList<>());
    private final List<Long> gaps = Collections.synchronizedList(new ArrayList<>());
    private final LinkedBlockingQueue<ScriptedSource> devices = new LinkedBlockingQueue<>();

    @Test
    void everythingCapturedIsHeardInOrderBeforeStopReturns() {
        CountDownLatch slow = new CountDownLatch(1);
        ScriptedSource device = new ScriptedSource(RATE_HZ).counts(0, 150, 512);
        LiveTake take = take(device, slowListener(slow), 200);
        Waiting.until("all is captured", () -> device.isUsedUp());
        slow.countDown();
        take.stop();
        assertThat(heard).hasSize(150);
        for (int i = 0; i < 150; i++) {
            assertThat(heard.get(i)).isEqualTo(i);
        }
        assertThat(take.state().phase()).isEqualTo(LiveState.Phase.STOPPED);
        assertThat(take.state().heardFrames()).isEqualTo(150 * 512);
        assertThat(take.state().lostFrames()).isZero();
    }

    @Test
    void aListenerThatIsTooSlowLosesWhatIsCountedAndIsToldWhere() {
        CountDownLatch slow = new CountDownLatch(1);
        ScriptedSource device = new ScriptedSource(RATE_HZ).counts(0, 30, 512);
        LiveTake take = take(device, slowListener(slow), 10);
        Waiting.until("all is captured", () -> device.isUsedUp());
        slow.countDown();
        Waiting.until("there is room", () -> heard.size() >= 10);
        device.counts(30, 1, 512);
        Waiting.until("the last is heard", () -> heard.contains(30f));
        take.stop();
        assertThat(take.state().heardFrames() + take.state().lostFrames()).isEqualTo(31 * 512);
        assertThat(take.state().lostFrames()).isGreaterThanOrEqualTo(19 * 512);
        // One loss or two: the analysis may have taken its first block in the middle of it.
        assertThat(gaps.stream().mapToLong(Long::longValue).sum()).isEqualTo(take.state().lostFrames());
    }

    @Test
    void aDeviceThatGoesAwayAndComesBackIsHeardAgain() {
        ScriptedSource first = new ScriptedSource(RATE_HZ).counts(0, 3, 512).goesAway();
        LiveTake take = take(first, listener(), 50);
        Waiting.until("the loss is told", () -> take.state().message().equals("still away") && heard.size() == 3);
        assertThat(take.state().phase()).isEqualTo(LiveState.Phase.WAITING_FOR_DEVICE);
        clockNanos.addAndGet(2_000 * MS);
        devices.add(new ScriptedSource(RATE_HZ).counts(3, 2, 512));
        Waiting.until("it runs again", () -> take.state().phase() == LiveState.Phase.RUNNING && heard.size() == 5);
        assertThat(take.state().message()).isEmpty();
        take.stop();
        assertThat(heard).containsExactly(0f, 1f, 2f, 3f, 4f);
        assertThat(take.state().lostFrames()).isEqualTo(2 * RATE_HZ - 512);
        assertThat(gaps).containsExactly(2L * RATE_HZ - 512);
    }

    @Test
    void aDeviceThatBlocksIsLetGoByTheWatchdogAndHeardAgain() {
        ScriptedSource stuck = new ScriptedSource(RATE_HZ).counts(0, 1, 512);
        LiveTake take = take(stuck, listener(), 50);
        Waiting.until("it runs", () -> take.state().phase() == LiveState.Phase.RUNNING);
        Waiting.until("the watchdog has had enough", () -> {
            clockNanos.addAndGet(5 * MS);
            return stuck.closed;
        });
        assertThat(clockNanos.get()).isGreaterThan(500 * MS);
        devices.add(new ScriptedSource(RATE_HZ).counts(1, 1, 512));
        Waiting.until("it is heard again", () -> heard.size() == 2);
        take.stop();
        assertThat(take.state().gaps()).extracting(LiveGap::cause).containsExactly(LiveGap.Cause.DEVICE_AWAY);
    }

    @Test
    void stoppingWhileTheDeviceIsAwayKeepsWhatWasHeard() {
        LiveTake take = take(new ScriptedSource(RATE_HZ).counts(0, 3, 512).goesAway(), listener(), 50);
        Waiting.until("the loss is told", () -> take.state().message().equals("still away") && heard.size() == 3);
        clockNanos.addAndGet(1_000 * MS);
        take.stop();
        take.stop();
        assertThat(heard).hasSize(3);
        assertThat(take.state().lostFrames()).isEqualTo(RATE_HZ);
        assertThat(take.state().phase()).isEqualTo(LiveState.Phase.STOPPED);
    }

    @Test
    void aSourceThatEndsByItselfEndsTheTake() {
        LiveTake take = take(new ScriptedSource(RATE_HZ).counts(0, 2, 512).ends(), listener(), 50);
        Waiting.until("the end is told", () -> take.state().phase() == LiveState.Phase.STOPPED);
        take.stop();
        assertThat(heard).containsExactly(0f, 1f);
        assertThat(take.state().lostFrames()).isZero();
    }

    @Test
    void aTakeOfZerosStillSaysWhatToCheckWhenItIsOver() {
        ScriptedSource device = new ScriptedSource(RATE_HZ);
        for (int i = 0; i < 150; i++) {
            device.delivers(512, 0);
        }
        LiveTake take = take(device.ends(), listener(), 200);
        Waiting.until("the end is told", () -> take.state().phase() == LiveState.Phase.STOPPED);
        take.stop();
        assertThat(take.state().message()).startsWith("channel 1 delivers nothing but exact zeros");
    }

    @Test
    void whatTheListenerThrowsEndsTheTakeAndComesOutOfStop() {
        LiveTake take = take(new ScriptedSource(RATE_HZ).counts(0, 5, 512), block -> {
            throw new IllegalStateException("meter broke");
        }, 50);
        Waiting.until("the end is told", () -> take.state().phase() == LiveState.Phase.STOPPED);
        assertThatThrownBy(take::stop).isInstanceOf(IllegalStateException.class).hasMessage("meter broke");
    }

    @Test
    void theListenerItselfMayEndTheTake() {
        LiveTake[] take = new LiveTake[1];
        CountDownLatch known = new CountDownLatch(1);
        take[0] = take(new ScriptedSource(RATE_HZ).counts(0, 5, 512), block -> {
            await(known);
            take[0].stop();
            heard.add(block.sample(0));
        }, 50);
        known.countDown();
        Waiting.until("the end is told", () -> take[0].state().phase() == LiveState.Phase.STOPPED);
        take[0].stop();
        assertThat(heard).contains(0f);
    }

    /** Stop from four threads while the device blocks, is away, or is just being opened: nobody hangs, nothing is left open. */
    @RepeatedTest(25)
    void stoppingFromAllSidesAtAnyMomentEnds(RepetitionInfo repetition) throws InterruptedException {
        List<ScriptedSource> opened = Collections.synchronizedList(new ArrayList<>());
        AtomicInteger attempts = new AtomicInteger();
        Supplier<SoundSource> opener = () -> {
            if (attempts.incrementAndGet() % 2 == 0) {
                throw SoundProblem.atStart("still away");
            }
            ScriptedSource next = new ScriptedSource(RATE_HZ).counts(1, 1, 512).goesAway();
            opened.add(next);
            return next;
        };
        LiveTake take = new LiveTake(new ScriptedSource(RATE_HZ).counts(0, 1, 512).goesAway(), opener, listener(), QUICK,
            clockNanos::get, new BlockRing(1_000, 512));
        take.begin();
        int moment = repetition.getCurrentRepetition() % 7;
        Waiting.until("the device was opened some times", () -> attempts.get() >= moment);
        List<Thread> stoppers = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Thread stopper = new Thread(take::stop);
            stoppers.add(stopper);
            stopper.start();
        }
        for (Thread stopper : stoppers) {
            stopper.join();
        }
        assertThat(take.state().phase()).isEqualTo(LiveState.Phase.STOPPED);
        assertThat(opened).allMatch(device -> device.closed);
        assertThat(heard).as("every device that was heard was heard once").hasSizeLessThanOrEqualTo(opened.size() + 1);
    }

    private LiveTake take(SoundSource first, BlockListener listener, int ringBlocks) {
        LiveTake take = new LiveTake(first, this::nextDevice, listener, QUICK, clockNanos::get, new BlockRing(ringBlocks, 512));
        take.begin();
        return take;
    }

    private SoundSource nextDevice() {
        ScriptedSource next = devices.poll();
        if (next == null) {
            throw SoundProblem.atStart("still away");
        }
        return next;
    }

    private BlockListener listener() {
        return slowListener(new CountDownLatch(0));
    }

    private BlockListener slowListener(CountDownLatch until) {
        return new BlockListener() {
            private long next;

            @Override
            public void accept(AudioBlock block) {
                await(until);
                assertThat(block.startFrame()).isEqualTo(next);
                next += block.frames();
                heard.add(block.sample(0));
            }

            @Override
            public void gap(long lostFrames) {
                gaps.add(lostFrames);
            }
        };
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
