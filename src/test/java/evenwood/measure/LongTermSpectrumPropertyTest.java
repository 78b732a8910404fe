package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LongTermSpectrumPropertyTest {
    private static final int[] RATES_HZ = {8_000, 16_000, 22_050, 44_100, 48_000};

    static long[] seeds() {
        return LongStream.rangeClosed(1, 50).toArray();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeChangesNothing(long seed) {
        HopGrid grid = grid(seed);
        float[] sound = Blocks.anySound(seed, grid.sampleRateHz(), 12);
        LongTermSpectrumReading inOneSize = reading(grid, sound, 512);
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(grid, grid.hopsIn(12));
        Blocks.feedInRandomSizes(sound, seed, new ShortTimeSpectrum(grid, meter)::accept);
        assertThat(meter.reading(activity(grid, meter.endHop()))).isEqualTo(inOneSize);
    }

    @ParameterizedTest(name = "blocks of {0}")
    @ValueSource(ints = {1, 8192})
    void neitherDoTheSmallestAndTheLargest(int blockFrames) {
        HopGrid grid = new HopGrid(48_000);
        float[] sound = Blocks.anySound(99, 48_000, 12);
        assertThat(reading(grid, sound, blockFrames)).isEqualTo(reading(grid, sound, 512));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesEveryLevelAlikeAndNothingElse(long seed) {
        HopGrid grid = grid(seed);
        double gainDb = new SplittableRandom(seed).nextDouble(-30, 30);
        float[] sound = Blocks.anySound(seed, grid.sampleRateHz(), 12);
        LongTermSpectrumReading before = reading(grid, sound, 512);
        LongTermSpectrumReading after = reading(grid, Blocks.scaled(sound, Math.pow(10, gainDb / 20)), 512);
        for (int i = 0; i < before.bands().size(); i++) {
            BandLevel a = before.bands().get(i);
            BandLevel b = after.bands().get(i);
            // Bands more than 100 dB under the loudest stand on the rounding of single precision.
            if (a.relativeDb() > -100) {
                assertThat(b.levelDbfs() - a.levelDbfs()).isCloseTo(gainDb, within(0.01));
                assertThat(b.relativeDb()).isCloseTo(a.relativeDb(), within(0.01));
                assertThat(b.relativeHalfWidthDb()).isCloseTo(a.relativeHalfWidthDb(), within(0.02));
                assertThat(b.signalToNoiseDb()).isCloseTo(a.signalToNoiseDb(), within(0.02));
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        HopGrid grid = grid(seed);
        float[] sound = Blocks.anySound(seed, grid.sampleRateHz(), 12);
        assertThat(reading(grid, Blocks.scaled(sound, -1), 512)).isEqualTo(reading(grid, sound, 512));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void noBandIsLouderThanAllTogether(long seed) {
        HopGrid grid = grid(seed);
        LongTermSpectrumReading reading = reading(grid, Blocks.anySound(seed, grid.sampleRateHz(), 12), 512);
        assertThat(reading.bands()).allSatisfy(level -> {
            assertThat(level.relativeDb()).isLessThanOrEqualTo(0);
            assertThat(level.levelDbfs() - reading.overallDbfs()).isCloseTo(level.relativeDb(), within(1e-9));
            assertThat(level.halfWidthDb()).isNotNegative();
        });
    }

    private static HopGrid grid(long seed) {
        return new HopGrid(RATES_HZ[(int) (seed % RATES_HZ.length)]);
    }

    private static LongTermSpectrumReading reading(HopGrid grid, float[] sound, int blockFrames) {
        LongTermSpectrumMeter meter = new LongTermSpectrumMeter(grid, grid.hopsIn(12));
        Blocks.feed(sound, blockFrames, new ShortTimeSpectrum(grid, meter)::accept);
        return meter.reading(activity(grid, meter.endHop()));
    }

    /** The first second quiet, the rest played. */
    private static ActivityReading activity(HopGrid grid, long hops) {
        byte[] states = new byte[(int) hops];
        Arrays.fill(states, 0, grid.hopsIn(1), ActivityReading.QUIET);
        Arrays.fill(states, grid.hopsIn(1) + 1, states.length, ActivityReading.PLAYING);
        return new ActivityReading(grid, 0, states, -60);
    }
}
