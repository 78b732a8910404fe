package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import org.junit.jupiter.api.Test;

class TruePeakMeterTest {
    private static final HopGrid GRID = new HopGrid(48_000);
    private final TruePeakMeter meter = new TruePeakMeter(GRID, 4);

    @Test
    void nothingHeardAndSilenceReadMinusInfinity() {
        assertThat(meter.reading()).isEqualTo(TruePeakReading.SILENCE);
        meter.accept(AudioBlock.of(0, new float[5000]));
        assertThat(meter.reading()).isEqualTo(TruePeakReading.SILENCE);
        assertThat(meter.reading().isSilent()).isTrue();
    }

    @Test
    void aPointBetweenSamplesIsFound() {
        // fs/4 at 45 degrees: every sample at 0.707 of the crest, so 3 dB are hidden between them.
        float[] sine = new float[4800];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) (0.5 * Math.sin(Math.PI / 2 * i + Math.PI / 4));
        }
        Blocks.feed(sine, meter::accept);
        assertThat(meter.reading().truePeakDbtp()).isCloseTo(-6.02, within(0.4));
    }

    @Test
    void theLastSampleOfATakeCountsAtOnce() {
        meter.accept(AudioBlock.of(0, 0f, 0f, 0.5f));
        assertThat(meter.reading().truePeakDbtp()).isCloseTo(-6.0206, within(1e-4));
    }

    @Test
    void everyHopHasItsOwnPeak() {
        float[] samples = new float[3 * GRID.hopFrames()];
        samples[GRID.hopFrames() + 100] = -0.5f;
        Blocks.feed(samples, meter::accept);
        assertThat(meter.endHop()).isEqualTo(3);
        assertThat(meter.hopPeakDbtp(0)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(meter.hopPeakDbtp(1)).isCloseTo(-6.0206, within(1e-4));
        assertThat(meter.hopPeakDbtp(2)).isEqualTo(Double.NEGATIVE_INFINITY);
    }

    @Test
    void onlyTheLastHopsAreRemembered() {
        Blocks.feed(new float[10 * GRID.hopFrames()], meter::accept);
        assertThat(meter.firstHop()).isEqualTo(6);
        assertThatThrownBy(() -> meter.hopPeakDbtp(5)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void resetForgetsTheSoundToo() {
        meter.accept(AudioBlock.of(0, 1f, 1f, 1f));
        meter.reset();
        meter.accept(AudioBlock.of(0, new float[100]));
        assertThat(meter.reading()).isEqualTo(TruePeakReading.SILENCE);
        assertThat(meter.endHop()).isZero();
    }

    @Test
    void aReadingNeverHoldsNaN() {
        assertThatThrownBy(() -> new TruePeakReading(Double.NaN)).hasMessage("true peak reading: truePeakDbtp=NaN, "
            + "but it must be a number (−Infinity for silence); clean the block before the meter");
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(meter::accept)).isZero();
    }
}
