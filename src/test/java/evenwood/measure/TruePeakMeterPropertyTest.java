package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class TruePeakMeterPropertyTest {
    private static final HopGrid GRID = new HopGrid(48_000);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = sound(seed);
        TruePeakMeter whole = heard(sound);
        for (int size : Blocks.SIZES) {
            TruePeakMeter meter = new TruePeakMeter(GRID, 1000);
            Blocks.feed(sound, size, meter::accept);
            assertSame(meter, whole);
        }
        TruePeakMeter meter = new TruePeakMeter(GRID, 1000);
        Blocks.feedInRandomSizes(sound, seed, meter::accept);
        assertSame(meter, whole);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesThePeakByTheSame(long seed) {
        float[] sound = sound(seed);
        double gainDb = seed - 40.0;
        double louder = heard(Blocks.scaled(sound, Math.pow(10, gainDb / 20))).reading().truePeakDbtp();
        assertThat(louder - heard(sound).reading().truePeakDbtp()).isCloseTo(gainDb, within(1e-4));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        float[] sound = sound(seed);
        assertThat(heard(Blocks.scaled(sound, -1)).reading()).isEqualTo(heard(sound).reading());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void itIsNeverBelowTheHighestSampleOfTheTakeOrOfAHop(long seed) {
        float[] sound = sound(seed);
        LevelMeter level = new LevelMeter(GRID, 1000);
        Blocks.feed(sound, level::accept);
        TruePeakMeter meter = heard(sound);
        assertThat(meter.reading().truePeakDbtp()).isGreaterThanOrEqualTo(level.reading().samplePeakDbfs());
        for (long hop = 0; hop < level.endHop(); hop++) {
            assertThat(meter.hopPeakDbtp(hop)).isGreaterThanOrEqualTo(level.hopPeakDbfs(hop));
        }
    }

    private static float[] sound(long seed) {
        return Blocks.anySound(seed, 48_000, 1 + seed / 100.0);
    }

    private static TruePeakMeter heard(float[] sound) {
        TruePeakMeter meter = new TruePeakMeter(GRID, 1000);
        Blocks.feed(sound, sound.length, meter::accept);
        return meter;
    }

    private static void assertSame(TruePeakMeter meter, TruePeakMeter whole) {
        assertThat(meter.reading()).isEqualTo(whole.reading());
        assertThat(meter.endHop()).isEqualTo(whole.endHop());
        for (long hop = 0; hop < whole.endHop(); hop++) {
            assertThat(meter.hopPeakDbtp(hop)).isEqualTo(whole.hopPeakDbtp(hop));
        }
    }
}
