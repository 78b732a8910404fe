package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Peak, RMS and crest of waves whose figures follow from their definition by hand. */
class LevelMeterReferenceTest {
    private static final int FRAMES = 48_000;
    private static final int PERIOD = 480;

    /** sqrt(1/2): −3.0103 dB. */
    @Test
    void aFullScaleSineReadsMinusThreeRms() {
        LevelReading reading = heard(i -> Math.sin(2 * Math.PI * i / PERIOD));
        assertThat(reading.samplePeakDbfs()).isCloseTo(0, within(1e-6));
        assertThat(reading.rmsDbfs()).isCloseTo(-3.0103, within(1e-4));
        assertThat(reading.crestFactorDb()).isCloseTo(3.0103, within(1e-4));
        assertThat(reading.dcOffset()).isCloseTo(0, within(1e-9));
    }

    /** A square wave's peak is its average. */
    @Test
    void aSquareWaveHasNoCrest() {
        LevelReading reading = heard(i -> i % PERIOD < PERIOD / 2 ? 0.25 : -0.25);
        assertThat(reading.rmsDbfs()).isCloseTo(-12.0412, within(1e-4));
        assertThat(reading.crestFactorDb()).isCloseTo(0, within(1e-9));
    }

    /** sqrt(1/3): 4.7712 dB; the steps of 240 samples to a slope move it by less than 0.0001 dB. */
    @Test
    void aTriangleHasACrestOfFourPointEight() {
        LevelReading reading = heard(i -> 2 * Math.abs(2.0 * (i % PERIOD) / PERIOD - 1) - 1);
        assertThat(reading.crestFactorDb()).isCloseTo(4.7712, within(1e-3));
    }

    /** A constant: RMS, peak and offset are the same number. */
    @Test
    void anOffsetCountsInTheAverageLevel() {
        LevelReading reading = heard(i -> -0.125);
        assertThat(reading.rmsDbfs()).isCloseTo(-18.0618, within(1e-4));
        assertThat(reading.dcOffset()).isEqualTo(-0.125);
    }

    private interface Wave {
        double at(int frame);
    }

    private static LevelReading heard(Wave wave) {
        float[] samples = new float[FRAMES];
        for (int i = 0; i < FRAMES; i++) {
            samples[i] = (float) wave.at(i);
        }
        LevelMeter meter = new LevelMeter(new HopGrid(FRAMES), 1);
        Blocks.feed(samples, meter::accept);
        return meter.reading();
    }
}
