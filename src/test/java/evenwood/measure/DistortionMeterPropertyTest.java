package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.SoundFormat;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class DistortionMeterPropertyTest {
    private static final int RATE_HZ = 44_100;
    private static final double SECONDS = 8;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void blockSizeChangesNothing(long seed) {
        float[] sound = sound(seed);
        DistortionReading whole = heard(sound).reading();
        DistortionMeter meter = meter(RATE_HZ);
        Blocks.feedInRandomSizes(sound, seed, meter::accept);
        assertThat(meter.reading()).isEqualTo(whole);
        int size = Blocks.SIZES[(int) (seed % Blocks.SIZES.length)];
        meter.reset();
        Blocks.feed(sound, size, meter::accept);
        assertThat(meter.reading()).isEqualTo(whole);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void polarityChangesNothing(long seed) {
        float[] sound = sound(seed);
        DistortionReading plain = heard(sound).reading();
        DistortionReading turned = heard(Blocks.scaled(sound, -1)).reading();
        assertThat(turned.verdict()).isEqualTo(plain.verdict());
        assertThat(turned.probability()).isCloseTo(plain.probability(), within(1e-9));
        assertThat(turned.evidence().compressionDb()).isCloseTo(plain.evidence().compressionDb(), within(1e-9));
    }

    /** Steps of the table of levels are 0.25 dB; a gain of whole steps moves only tops that stand on an edge. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void belowFullScaleGainMovesTheOnsetAndNothingElse(long seed) {
        float[] sound = saturated(seed);
        double gainDb = -0.25 * seed;
        DistortionReading plain = heard(sound).reading();
        DistortionReading softer = heard(Blocks.scaled(sound, Math.pow(10, gainDb / 20))).reading();
        assertThat(softer.verdict()).isEqualTo(plain.verdict());
        assertThat(softer.probability()).isCloseTo(plain.probability(), within(0.02));
        assertThat(softer.onsetDbfs().isPresent()).isEqualTo(plain.onsetDbfs().isPresent());
        plain.onsetDbfs().ifPresent(onset -> assertThat(softer.onsetDbfs().orElseThrow()).isCloseTo(onset + gainDb, within(0.1)));
    }

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 11_025, 22_050, 44_100, 48_000, 96_000, 192_000})
    void silenceIsNeverJudgedAtAnyRate(int rateHz) {
        DistortionMeter meter = meter(rateHz);
        Blocks.feed(new float[6 * rateHz], meter::accept);
        DistortionReading reading = meter.reading();
        assertThat(reading.verdict()).isEqualTo(DistortionReading.Verdict.UNSURE);
        assertThat(reading.clippedSamples()).isZero();
        assertThat(reading.onsetDbfs()).isEmpty();
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(meter(48_000)::accept)).isZero();
    }

    /** Half of the seeds go through a tanh stage. */
    private static float[] sound(long seed) {
        return seed % 2 == 0 ? saturated(seed) : Blocks.anySound(seed, RATE_HZ, SECONDS);
    }

    private static float[] saturated(long seed) {
        float[] sound = Blocks.anySound(seed, RATE_HZ, SECONDS);
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (0.4 * Math.tanh(4 * sound[i]));
        }
        return sound;
    }

    private static DistortionMeter heard(float[] sound) {
        DistortionMeter meter = meter(RATE_HZ);
        Blocks.feed(sound, meter::accept);
        return meter;
    }

    private static DistortionMeter meter(int rateHz) {
        return new DistortionMeter(new SoundFormat(rateHz, 1, 1, 24), new HopGrid(rateHz), 1000);
    }
}
