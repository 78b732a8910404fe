package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LoudnessMeterPropertyTest {
    /** One where neither 10 ms nor 100 ms are whole frames, so that steps differ in length. */
    private static final int RATE = 11_025;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = sound(seed);
        LoudnessReading whole = heard(sound);
        for (int size : Blocks.SIZES) {
            LoudnessMeter meter = new LoudnessMeter(RATE, 1);
            Blocks.feed(sound, size, meter::accept);
            assertThat(meter.reading()).isEqualTo(whole);
        }
        LoudnessMeter meter = new LoudnessMeter(RATE, 1);
        Blocks.feedInRandomSizes(sound, seed, meter::accept);
        assertThat(meter.reading()).isEqualTo(whole);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gainMovesEveryLoudnessByTheSameAndTheRangeNot(long seed) {
        // Well above −70 LUFS at both gains: the absolute gate is the one thing that must not move.
        float[] sound = Blocks.scaled(sound(seed), 1);
        for (int i = 0; i < sound.length; i++) {
            sound[i] += (float) (0.01 * Math.sin(0.3 * i));
        }
        double gainDb = (seed - 25) * 0.73;
        LoudnessReading plain = heard(sound);
        LoudnessReading louder = heard(Blocks.scaled(sound, Math.pow(10, gainDb / 20)));
        assertThat(louder.momentaryLufs() - plain.momentaryLufs()).isCloseTo(gainDb, within(1e-4));
        assertThat(louder.maxMomentaryLufs() - plain.maxMomentaryLufs()).isCloseTo(gainDb, within(1e-4));
        assertThat(louder.shortTermLufs() - plain.shortTermLufs()).isCloseTo(gainDb, within(1e-4));
        assertThat(louder.maxShortTermLufs() - plain.maxShortTermLufs()).isCloseTo(gainDb, within(1e-4));
        assertThat(louder.integratedLufs() - plain.integratedLufs()).isCloseTo(gainDb, within(0.01));
        assertThat(louder.rangeLu()).isCloseTo(plain.rangeLu(), within(0.02));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        assertThat(heard(Blocks.scaled(sound(seed), -1))).isEqualTo(heard(sound(seed)));
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theSameOnTwoChannelsReadsThreeMore(long seed) {
        float[] sound = sound(seed);
        LoudnessMeter stereo = new LoudnessMeter(RATE, 2);
        AudioBlock[] channels = new AudioBlock[2];
        Blocks.feed(sound, block -> {
            channels[0] = block;
            channels[1] = block;
            stereo.accept(channels);
        });
        assertThat(stereo.reading().maxMomentaryLufs() - heard(sound).maxMomentaryLufs())
            .isCloseTo(10 * Math.log10(2), within(1e-9));
    }

    private static float[] sound(long seed) {
        return Blocks.anySound(seed, RATE, 6 + seed / 10.0);
    }

    private static LoudnessReading heard(float[] sound) {
        LoudnessMeter meter = new LoudnessMeter(RATE, 1);
        Blocks.feed(sound, sound.length, meter::accept);
        return meter.reading();
    }
}
