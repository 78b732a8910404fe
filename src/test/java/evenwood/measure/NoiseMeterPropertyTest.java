package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.NoiseMixture.Family;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class NoiseMeterPropertyTest {
    private static final int RATE_HZ = 44_100;
    private static final HopGrid GRID = new HopGrid(RATE_HZ);

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    static LongStream fewSeeds() {
        return LongStream.rangeClosed(1, 5);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("fewSeeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = mixture(seed).samples();
        NoiseReading whole = NoiseMixture.read(sound, RATE_HZ, NoiseMixture.allQuiet(RATE_HZ, sound.length));
        for (int size : Blocks.SIZES) {
            NoiseMeter meter = new NoiseMeter(GRID, 30);
            ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, meter);
            Blocks.feed(sound, size, spectrum::accept);
            assertThat(meter.reading(NoiseMixture.allQuiet(RATE_HZ, sound.length))).isEqualTo(whole);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesEveryLevelByTheSame(long seed) {
        float[] sound = mixture(seed).samples();
        double gainDb = seed - 25.0;
        NoiseReading plain = read(sound);
        NoiseReading louder = read(Blocks.scaled(sound, Math.pow(10, gainDb / 20)));
        assertThat(louder.floorDbfs() - plain.floorDbfs()).isCloseTo(gainDb, within(1e-3));
        assertThat(louder.floorDbfsA() - plain.floorDbfsA()).isCloseTo(gainDb, within(1e-3));
        assertThat(louder.hissDbfs() - plain.hissDbfs()).isCloseTo(gainDb, within(1e-3));
        assertThat(louder.humDbfs() - plain.humDbfs()).isCloseTo(gainDb, within(1e-3));
        assertThat(louder.mainsHz().orElseThrow()).isCloseTo(plain.mainsHz().orElseThrow(), within(1e-5));
        assertThat(louder.tones()).hasSameSizeAs(plain.tones());
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        float[] sound = mixture(seed).samples();
        assertThat(read(Blocks.scaled(sound, -1))).isEqualTo(read(sound));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theMainsOfAnyMixtureIsFound(long seed) {
        NoiseMixture mixture = mixture(seed);
        NoiseReading reading = read(mixture.samples());
        assertThat(reading.mainsHz().orElseThrow()).isCloseTo(mainsHz(seed), within(0.02));
        assertThat(reading.humDbfs()).isCloseTo(mixture.humDbfs(), within(1.0));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void hissOfAnyLevelIsNothingButHiss(long seed) {
        double dbfs = -30 - 1.8 * seed;
        NoiseReading reading = read(new NoiseMixture(RATE_HZ, 2, seed).hiss(dbfs).samples());
        assertThat(reading.hissDbfs()).isCloseTo(dbfs + 10 * Math.log10(19_980 / 22_050.0), within(0.4));
        assertThat(reading.mainsHz()).isEmpty();
        assertThat(reading.humDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.buzzDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(reading.tones()).isEmpty();
    }

    @Test
    void hearingAllocatesNothing() {
        NoiseMeter meter = new NoiseMeter(GRID, 10);
        ShortTimeSpectrum spectrum = new ShortTimeSpectrum(GRID, meter);
        assertThat(Allocation.bytesOf(spectrum::accept)).isZero();
    }

    /** Four seconds of hiss and mains noise of some origin, 10 to 50 dB over it. */
    private static NoiseMixture mixture(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Family family = Family.values()[random.nextInt(Family.values().length)];
        return new NoiseMixture(RATE_HZ, 4, seed).hiss(-80).mains(family, mainsHz(seed), random.nextDouble(-70, -30));
    }

    private static double mainsHz(long seed) {
        return (seed % 2 == 0 ? 50 : 60) + 0.5 * Math.sin(seed);
    }

    private static NoiseReading read(float[] sound) {
        return NoiseMixture.read(sound, RATE_HZ, NoiseMixture.allQuiet(RATE_HZ, sound.length));
    }
}
