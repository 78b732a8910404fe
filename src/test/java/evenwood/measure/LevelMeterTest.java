package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class LevelMeterTest {
    private static final HopGrid GRID = new HopGrid(48_000);
    private final LevelMeter meter = new LevelMeter(GRID, 4);

    @Test
    void nothingHeardReadsSilence() {
        assertThat(meter.reading()).isEqualTo(LevelReading.SILENCE);
        assertThat(meter.reading().crestFactorDb()).isZero();
    }

    @Test
    void silenceReadsMinusInfinityAndCountsItsFrames() {
        meter.accept(AudioBlock.of(0, new float[5000]));
        assertThat(meter.reading()).isEqualTo(new LevelReading(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, 0, 5000));
        assertThat(meter.reading().isSilent()).isTrue();
    }

    @Test
    void theHighestSampleCountsWhateverItsSign() {
        meter.accept(AudioBlock.of(0, 0.1f, -0.5f, 0.25f));
        assertThat(meter.reading().samplePeakDbfs()).isCloseTo(-6.0206, within(1e-4));
    }

    @Test
    void anOffsetIsTheMeanOfTheSamples() {
        float[] samples = new float[4096];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (0.01 + 0.5 * Math.sin(2 * Math.PI * i / 64));
        }
        meter.accept(AudioBlock.of(0, samples));
        assertThat(meter.reading().dcOffset()).isCloseTo(0.01, within(1e-7));
    }

    @Test
    void aSampleBeyondFullScaleReadsAboveZero() {
        meter.accept(AudioBlock.of(0, 2f));
        assertThat(meter.reading().samplePeakDbfs()).isCloseTo(6.0206, within(1e-4));
    }

    @Test
    void everyHopHasItsOwnPeakAndLevel() {
        int hopFrames = GRID.hopFrames();
        float[] samples = new float[3 * hopFrames + 10];
        Arrays.fill(samples, hopFrames, 2 * hopFrames, 0.5f);
        Arrays.fill(samples, 2 * hopFrames, 2 * hopFrames + hopFrames / 4, -1f);
        Blocks.feed(samples, meter::accept);
        assertThat(meter.firstHop()).isZero();
        assertThat(meter.endHop()).isEqualTo(3);
        assertThat(meter.hopPeakDbfs(0)).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(meter.hopPeakDbfs(1)).isCloseTo(-6.0206, within(1e-4));
        assertThat(meter.hopRmsDbfs(1)).isCloseTo(-6.0206, within(1e-4));
        assertThat(meter.hopPeakDbfs(2)).isZero();
        assertThat(meter.hopRmsDbfs(2)).isCloseTo(-6.0206, within(1e-4));
    }

    @Test
    void onlyTheLastHopsAreRemembered() {
        Blocks.feed(new float[10 * GRID.hopFrames()], meter::accept);
        assertThat(meter.firstHop()).isEqualTo(6);
        assertThat(meter.endHop()).isEqualTo(10);
        assertThatThrownBy(() -> meter.hopPeakDbfs(5)).isInstanceOf(IndexOutOfBoundsException.class);
    }

    @Test
    void resetForgetsEverything() {
        Blocks.feed(Blocks.anySound(3, 48_000, 1), meter::accept);
        meter.reset();
        assertThat(meter.reading()).isEqualTo(LevelReading.SILENCE);
        assertThat(meter.endHop()).isZero();
        meter.accept(AudioBlock.of(0, 0.25f, -0.25f));
        assertThat(meter.reading().frames()).isEqualTo(2);
        assertThat(meter.reading().rmsDbfs()).isCloseTo(-12.0412, within(1e-4));
    }

    @Test
    void aReadingNeverHoldsNaN() {
        assertThatThrownBy(() -> new LevelReading(0, Double.NaN, 0, 1)).hasMessage("level reading: samplePeakDbfs=0.0, "
            + "rmsDbfs=NaN, dcOffset=0.0, but all must be numbers (−Infinity for silence); clean the block before the meter");
    }

    @Test
    void hearingAllocatesNothing() {
        assertThat(Allocation.bytesOf(meter::accept)).isZero();
    }
}
