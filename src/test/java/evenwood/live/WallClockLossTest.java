package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WallClockLossTest {
    private static final int RATE_HZ = 48_000;
    private static final long TICK_NANOS = 100_000_000;

    private final WallClockLoss loss = new WallClockLoss(RATE_HZ);
    private long found;

    @Test
    void aSteadyDeviceLosesNothing() {
        run(0, 600, 1.0, 0);
        assertThat(found).isZero();
    }

    @ParameterizedTest(name = "sound clock off by {0}")
    @ValueSource(doubles = {0.999, 1.001, 0.99})
    void aSoundClockThatIsOffIsNoLossInEightHours(double pace) {
        run(0, 8 * 36_000, pace, 0);
        assertThat(found).isZero();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void lateAndBunchedDeliveryIsNoLoss(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int tick = 0; tick < 3_000; tick++) {
            // Up to 200 ms late, but now and then caught up.
            long late = tick % 7 == 0 ? 0 : random.nextLong(RATE_HZ / 5);
            found += loss.lostFrames(tick * TICK_NANOS, Math.max(0, (long) tick * RATE_HZ / 10 - late));
        }
        assertThat(found).isZero();
    }

    @ParameterizedTest(name = "{0} frames")
    @ValueSource(ints = {4_800, 24_000, 144_000})
    void whatIsMissingForGoodIsFoundOnceAndInFull(int missing) {
        run(0, 100, 1.0, 0);
        assertThat(found).isZero();
        run(100, 200, 1.0, missing);
        assertThat(found).isEqualTo(missing);
        run(200, 400, 1.0, missing);
        assertThat(found).isEqualTo(missing);
    }

    @Test
    void afterARestartTheOldMissIsForgotten() {
        run(0, 100, 1.0, 0);
        loss.restart();
        run(100, 300, 1.0, 480_000);
        assertThat(found).isZero();
    }

    private void run(int fromTick, int toTick, double pace, long missing) {
        for (int tick = fromTick; tick < toTick; tick++) {
            found += loss.lostFrames(tick * TICK_NANOS, Math.round(tick * pace * RATE_HZ / 10) - missing);
        }
    }
}
