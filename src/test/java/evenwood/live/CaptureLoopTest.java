package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.sound.AudioBlock;
import evenwood.sound.BlockRing;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** The loop run to its end on the test's own thread: every device here ends by itself, and the clock is moved by hand. */
class CaptureLoopTest {
    private static final int RATE_HZ = 1000 * 8;
    private static final LiveTiming NO_WAITING = new LiveTiming(1, 1, 0, 1, 1);

    private final AtomicLong clockNanos = new AtomicLong();
    private final BlockRing ring = new BlockRing(16, 64);
    private final GapLog gaps = new GapLog();
    private final AudioBlock out = new AudioBlock(64);

    @Test
    void everyBlockIsOfferedWithItsPlaceInTheTake() {
        CaptureLoop capture = loop(new ScriptedSource(RATE_HZ).counts(1, 3, 64).delivers(10, 4).ends(), noDevice());
        capture.run();
        assertThat(startFrames()).containsExactly(0L, 64L, 128L, 192L);
        assertThat(capture.capturedFrames()).isEqualTo(202);
        assertThat(capture.isFinished()).isTrue();
        assertThat(gaps.picture().lostFrames()).isZero();
    }

    @Test
    void aRingThatIsFullCostsExactlyWhatIsCounted() {
        ScriptedSource source = new ScriptedSource(RATE_HZ).counts(0, 20, 64).ends();
        loop(source, noDevice()).run();
        assertThat(ring.lostFrames()).isEqualTo(4 * 64);
        assertThat(gaps.picture().latest()).containsExactly(
            new LiveGap(LiveGap.Cause.OVERRUN, 16 * 64 / 8000.0, 4 * 64 / 8000.0, 4 * 64));
    }

    @Test
    void afterAnOverrunPositionsGoOnWhereTheClockIs() {
        ScriptedSource first = new ScriptedSource(RATE_HZ).counts(0, 18, 64).goesAway();
        ScriptedSource second = new ScriptedSource(RATE_HZ).counts(18, 1, 64).ends();
        CaptureLoop capture = loop(first, () -> {
            startFrames();
            clockNanos.addAndGet(TimeUnit.SECONDS.toNanos(1));
            return second;
        });
        capture.run();
        long away = RATE_HZ - 64;
        assertThat(startFrames()).containsExactly(18 * 64L + away);
        assertThat(gaps.picture().lostFrames()).as("nothing is counted twice").isEqualTo(2 * 64 + away);
        assertThat(gaps.picture().latest()).extracting(LiveGap::cause)
            .containsExactly(LiveGap.Cause.OVERRUN, LiveGap.Cause.DEVICE_AWAY);
    }

    @Test
    void aDeviceThatComesBackLeavesAGapAsLongAsTheClockSays() {
        ScriptedSource first = new ScriptedSource(RATE_HZ).counts(0, 2, 64).goesAway();
        ScriptedSource second = new ScriptedSource(RATE_HZ).counts(2, 1, 64).ends();
        CaptureLoop capture = loop(first, () -> {
            clockNanos.addAndGet(TimeUnit.MILLISECONDS.toNanos(2_500));
            return second;
        });
        capture.run();
        long lost = 2_500 * RATE_HZ / 1000 - 64;
        assertThat(gaps.picture().latest()).containsExactly(
            new LiveGap(LiveGap.Cause.DEVICE_AWAY, 128.0 / RATE_HZ, (double) lost / RATE_HZ, lost));
        assertThat(startFrames()).containsExactly(0L, 64L, 128L + lost);
        assertThat(first.closed).isTrue();
    }

    @Test
    void itIsOpenedAgainUntilItWorks() {
        ScriptedSource first = new ScriptedSource(RATE_HZ).counts(0, 1, 64).goesAway();
        Deque<Supplier<SoundSource>> attempts = new ArrayDeque<>(List.of(
            () -> { throw SoundProblem.atStart("not there yet"); },
            () -> { throw new IllegalArgumentException("no line"); },
            () -> new ScriptedSource(RATE_HZ).goesAway(),
            () -> new ScriptedSource(RATE_HZ).counts(1, 1, 64).ends()));
        CaptureLoop capture = loop(first, () -> attempts.remove().get());
        capture.run();
        assertThat(attempts).isEmpty();
        assertThat(capture.capturedFrames()).isEqualTo(128);
        assertThat(gaps.picture().latest()).as("one absence is one gap, however often it was tried").hasSize(1);
    }

    @Test
    void aDriverThatThrowsAnythingIsADeviceThatIsAway() {
        ScriptedSource works = new ScriptedSource(RATE_HZ).counts(0, 1, 64).ends();
        ScriptedSource broken = new ScriptedSource(RATE_HZ) {
            @Override
            public int read(AudioBlock block) {
                throw new IllegalStateException("native code said no");
            }
        };
        CaptureLoop capture = loop(broken, () -> works);
        capture.run();
        assertThat(capture.capturedFrames()).isEqualTo(64);
    }

    @Test
    void whatIsAwayWhenTheTakeEndsIsCountedToo() {
        ScriptedSource first = new ScriptedSource(RATE_HZ).counts(0, 1, 64).goesAway();
        CaptureLoop[] capture = new CaptureLoop[1];
        capture[0] = loop(first, () -> {
            clockNanos.addAndGet(TimeUnit.SECONDS.toNanos(1));
            capture[0].stop();
            throw SoundProblem.atStart("still away");
        });
        capture[0].run();
        assertThat(gaps.picture().lostFrames()).isEqualTo(RATE_HZ);
    }

    @Test
    void beforeTheFirstFrameNothingCanBeLost() {
        ScriptedSource dead = new ScriptedSource(RATE_HZ).goesAway();
        CaptureLoop capture = loop(dead, () -> {
            clockNanos.addAndGet(TimeUnit.SECONDS.toNanos(60));
            return new ScriptedSource(RATE_HZ).counts(0, 1, 64).ends();
        });
        capture.run();
        assertThat(gaps.picture().latest()).isEmpty();
        assertThat(startFrames()).containsExactly(0L);
    }

    private CaptureLoop loop(SoundSource first, Supplier<? extends SoundSource> opener) {
        return new CaptureLoop(first, opener, ring, gaps, NO_WAITING, clockNanos::get, 64);
    }

    private static Supplier<SoundSource> noDevice() {
        return () -> {
            throw new AssertionError("nothing was lost, so nothing is opened again");
        };
    }

    private List<Long> startFrames() {
        List<Long> starts = new java.util.ArrayList<>();
        while (ring.poll(out)) {
            starts.add(out.startFrame());
        }
        return starts;
    }
}
