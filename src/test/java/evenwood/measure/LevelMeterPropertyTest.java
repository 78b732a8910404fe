package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LevelMeterPropertyTest {
    private static final HopGrid GRID = new HopGrid(44_100);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = sound(seed);
        LevelMeter whole = heard(sound);
        for (int size : Blocks.SIZES) {
            LevelMeter meter = new LevelMeter(GRID, 1000);
            Blocks.feed(sound, size, meter::accept);
            assertSame(meter, whole);
        }
        LevelMeter meter = new LevelMeter(GRID, 1000);
        Blocks.feedInRandomSizes(sound, seed, meter::accept);
        assertSame(meter, whole);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesEveryLevelByTheSame(long seed) {
        float[] sound = sound(seed);
        double gainDb = seed - 40.0;
        LevelReading plain = heard(sound).reading();
        LevelReading louder = heard(Blocks.scaled(sound, Math.pow(10, gainDb / 20))).reading();
        assertThat(louder.samplePeakDbfs() - plain.samplePeakDbfs()).isCloseTo(gainDb, within(1e-5));
        assertThat(louder.rmsDbfs() - plain.rmsDbfs()).isCloseTo(gainDb, within(1e-5));
        assertThat(louder.crestFactorDb()).isCloseTo(plain.crestFactorDb(), within(1e-5));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityTurnsOnlyTheOffset(long seed) {
        float[] sound = sound(seed);
        LevelReading plain = heard(sound).reading();
        LevelReading turned = heard(Blocks.scaled(sound, -1)).reading();
        assertThat(turned).isEqualTo(new LevelReading(plain.samplePeakDbfs(), plain.rmsDbfs(), -plain.dcOffset(), plain.frames()));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void readingsAreThoseOfThePlainDefinition(long seed) {
        float[] sound = sound(seed);
        double sum = 0;
        double squares = 0;
        double peak = 0;
        for (float x : sound) {
            sum += x;
            squares += (double) x * x;
            peak = Math.max(peak, Math.abs(x));
        }
        LevelReading reading = heard(sound).reading();
        assertThat(reading.samplePeakDbfs()).isEqualTo(20 * Math.log10(peak));
        assertThat(reading.rmsDbfs()).isCloseTo(10 * Math.log10(squares / sound.length), within(1e-9));
        assertThat(reading.dcOffset()).isCloseTo(sum / sound.length, within(1e-12));
    }

    private static float[] sound(long seed) {
        return Blocks.anySound(seed, 44_100, 1 + seed / 100.0);
    }

    private static LevelMeter heard(float[] sound) {
        LevelMeter meter = new LevelMeter(GRID, 1000);
        Blocks.feed(sound, sound.length, meter::accept);
        return meter;
    }

    private static void assertSame(LevelMeter meter, LevelMeter whole) {
        assertThat(meter.reading()).isEqualTo(whole.reading());
        assertThat(meter.endHop()).isEqualTo(whole.endHop());
        for (long hop = 0; hop < whole.endHop(); hop++) {
            assertThat(meter.hopPeakDbfs(hop)).isEqualTo(whole.hopPeakDbfs(hop));
            assertThat(meter.hopRmsDbfs(hop)).isEqualTo(whole.hopRmsDbfs(hop));
        }
    }
}
