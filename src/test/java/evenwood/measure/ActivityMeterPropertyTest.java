package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ActivityMeterPropertyTest {
    private static final int RATE = 16_000;

    static LongStream seeds() {
        return LongStream.range(0, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeDoesNotMatter(long seed) {
        SoundSketch sketch = anyTake(seed);
        int other = 1 + new SplittableRandom(seed).nextInt(8192);
        assertThat(read(sketch, other).states()).isEqualTo(read(sketch, seed % 10 == 0 ? 1 : 512).states());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesTheFloorAndNothingElse(long seed) {
        ActivityReading before = read(anyTake(seed), 512);
        double gainDb = -25 + seed;
        ActivityReading after = read(anyTake(seed).gain(gainDb), 512);
        assertThat(after.states()).isEqualTo(before.states());
        assertThat(after.floorDbfs()).isCloseTo(before.floorDbfs() + gainDb, within(0.01));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        SoundSketch sketch = anyTake(seed);
        ActivityReading before = read(sketch, 512);
        for (int i = 0; i < sketch.samples.length; i++) {
            sketch.samples[i] = -sketch.samples[i];
        }
        assertThat(read(sketch, 512).states()).isEqualTo(before.states());
    }

    @Test
    void silenceIsQuietAndItsFloorIsMinusInfinity() {
        ActivityReading reading = read(new SoundSketch(RATE, 5, 0), 512);
        assertThat(reading.floorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.playingSeconds()).isZero();
        assertThat(reading.quietSeconds()).isGreaterThan(4.9);
    }

    @Test
    void nothingHeardIsNothingSaid() {
        ActivityReading reading = new ActivityMeter(new HopGrid(RATE), 10).reading();
        assertThat(reading.states()).isEmpty();
        assertThat(reading.floorDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void resetForgetsEverything() {
        HopGrid grid = new HopGrid(RATE);
        ActivityMeter meter = new ActivityMeter(grid, 1000);
        anyTake(7).into(meter::accept, 700);
        meter.reset();
        anyTake(3).into(meter::accept, 512);
        assertThat(meter.reading().states()).isEqualTo(read(anyTake(3), 512).states());
    }

    @Test
    void acceptAllocatesNothing() {
        assertThat(Allocation.bytesOf(new ActivityMeter(new HopGrid(48_000), 500)::accept)).isZero();
    }

    private static SoundSketch anyTake(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        SoundSketch sketch = new SoundSketch(RATE, 8, seed).hiss(-90 + 40 * random.nextDouble());
        if (seed % 3 == 0) {
            sketch.hum(seed % 2 == 0 ? 50 : 60, -70 + 20 * random.nextDouble());
        }
        for (double at = random.nextDouble(); at < 7; at += 0.2 + 1.5 * random.nextDouble()) {
            double hz = 80 * Math.pow(2, 3 * random.nextDouble());
            if (seed % 4 == 1) {
                sketch.bow(at, 0.2 + random.nextDouble(), hz, -30 + 20 * random.nextDouble());
            } else {
                sketch.pluck(at, 0.2 + 2 * random.nextDouble(), hz, -30 + 20 * random.nextDouble(), 5 + 20 * random.nextDouble());
            }
        }
        return sketch;
    }

    private static ActivityReading read(SoundSketch sketch, int blockFrames) {
        ActivityMeter meter = new ActivityMeter(new HopGrid(sketch.sampleRateHz), 1000);
        sketch.into(meter::accept, blockFrames);
        return meter.reading();
    }
}
