package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ClickAndDropoutPropertyTest {
    private static final int RATE_HZ = 48_000;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    static LongStream fewSeeds() {
        return LongStream.rangeClosed(1, 8);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("fewSeeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = damaged(seed);
        ClickReading clicks = HeardInBlocks.clicks(sound, RATE_HZ);
        List<Dropout> dropouts = HeardInBlocks.dropouts(sound, RATE_HZ);
        assertThat(clicks.count()).isPositive();
        assertThat(dropouts).isNotEmpty();
        for (int size : Blocks.SIZES) {
            ClickMeter clickMeter = new ClickMeter(RATE_HZ);
            DropoutMeter dropoutMeter = new DropoutMeter(RATE_HZ);
            Blocks.feed(sound, size, clickMeter::accept);
            Blocks.feed(sound, size, dropoutMeter::accept);
            assertThat(clickMeter.reading()).isEqualTo(clicks);
            assertThat(dropoutMeter.places()).isEqualTo(dropouts);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        float[] sound = damaged(seed);
        float[] turned = Blocks.scaled(sound, -1);
        assertThat(HeardInBlocks.clicks(turned, RATE_HZ)).isEqualTo(HeardInBlocks.clicks(sound, RATE_HZ));
        assertThat(HeardInBlocks.dropouts(turned, RATE_HZ)).isEqualTo(HeardInBlocks.dropouts(sound, RATE_HZ));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void pluckedAndBowedNotesHaveNeither(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SoundSketch sketch = new SoundSketch(RATE_HZ, 5, seed).hiss(-90 + 0.5 * seed);
        for (double at = 0.1; at < 4.5; at += random.nextDouble(0.08, 0.6)) {
            double hz = 40 * Math.pow(2, random.nextDouble(5));
            if (random.nextInt(4) == 0) {
                sketch.bow(at, random.nextDouble(0.2, 1.5), hz, random.nextDouble(-30, -6));
            } else {
                sketch.pluck(at, random.nextDouble(0.1, 2), hz, random.nextDouble(-30, -3), random.nextDouble(5, 60));
            }
        }
        float[] sound = sketch.samples;
        assertThat(HeardInBlocks.clicks(sound, RATE_HZ).count()).isZero();
        assertThat(HeardInBlocks.dropouts(sound, RATE_HZ)).isEmpty();
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(new ClickMeter(RATE_HZ)::accept)).isZero();
        assertThat(Allocation.bytesOf(new DropoutMeter(RATE_HZ)::accept)).isZero();
    }

    /** A chord in hiss with one click and one hole of each kind. */
    private static float[] damaged(long seed) {
        float[] sound = new NoiseMixture(RATE_HZ, 2, seed).hiss(-75).tone(146.8, -20).tone(220.3, -23).tone(371.7, -26).samples();
        for (int i = 0; i < 100; i++) {
            sound[20_000 + i] += (float) (0.3 * Math.exp(-i / 12.0));
            sound[40_000 + i] = 0;
            sound[60_000 + i] = sound[59_999];
        }
        System.arraycopy(sound, 80_000 - 480, sound, 80_000, 480);
        return sound;
    }
}
