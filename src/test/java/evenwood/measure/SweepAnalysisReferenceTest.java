package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.eq.FilterKind;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sweeps through filters of known response (the audio EQ cookbook's) and curves of known harmonics (x², x³ of a sine, by trigonometry). */
class SweepAnalysisReferenceTest {
    private static final EqChain BOX = EqChain.of(EqFilter.lowShelf(120, EqFilter.BUTTERWORTH_Q, 8), EqFilter.peak(700, 1.4, -9),
        EqFilter.highShelf(3000, EqFilter.BUTTERWORTH_Q, 5), new EqFilter(FilterKind.HIGH_PASS, 60, EqFilter.BUTTERWORTH_Q, 0, 3)).withGainDb(-12);

    @ParameterizedTest
    @ValueSource(ints = {16_000, 44_100, 48_000})
    void aBoxesResponseIsWithinATenthOfADecibelOfItsFilters(int rateHz) {
        SweepReading reading = SweepAnalysis.of(through(BOX, SineSweeps.samples(rateHz), rateHz), rateHz).orElseThrow();
        assertWithin(0.1, reading, rateHz);
        assertThat(reading.overloadSentDbfs()).isEmpty();
        assertThat(reading.levels()).hasSize(SineSweeps.COUNT);
    }

    @Test
    void hissAndAClockThatRunsFastDoNoHarm() {
        float[] fast = SineSweeps.samples(48_005);
        float[] heard = through(BOX, fast, 48_000);
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < heard.length; i++) {
            heard[i] += (float) (0.0005 * (random.nextDouble() - 0.5));
        }
        assertWithin(0.15, SweepAnalysis.of(heard, 48_000).orElseThrow(), 48_000);
    }

    @Test
    void theSecondHarmonicOfAParabolaIsHalfItsCurvatureTimesTheLevel() {
        // (A·sin)² = A²/2 − A²/2·cos(2…): 0.2·A/2 of the tone; 1 % at A = 0.1, which is −20 dBFS.
        SweepReading reading = bent(x -> x + 0.2 * x * x, 16_000);
        for (SweepReading.Level level : reading.levels()) {
            assertThat(level.distortion()).isCloseTo(0.1 * Math.pow(10, level.sentDbfs() / 20), within(0.0004));
        }
        assertThat(reading.overloadSentDbfs().orElseThrow()).isCloseTo(-20, within(0.3));
    }

    @Test
    void theThirdHarmonicOfACubicGrowsWithTheSquareOfTheLevel() {
        // x − 0.4·x³: third harmonic 0.1·A², tone 1 − 0.3·A²; 1 % at A² = 0.1/(1 + 0.03), −10.13 dBFS.
        SweepReading reading = bent(x -> x - 0.4 * x * x * x, 16_000);
        SweepReading.Level loudest = reading.levels().get(SineSweeps.COUNT - 1);
        double square = Math.pow(10, loudest.sentDbfs() / 10);
        assertThat(loudest.distortion()).isCloseTo(0.1 * square / (1 - 0.3 * square), within(0.001));
        assertThat(reading.overloadSentDbfs().orElseThrow()).isCloseTo(-10.13, within(0.5));
        assertThat(reading.overloadHeardDbfs().orElseThrow()).isCloseTo(-10.4, within(0.6));
    }

    @Test
    void aRecordingThatBeganLateAndStoppedEarlyKnowsWhichSweepIsWhich() {
        float[] all = through(BOX, SineSweeps.samples(16_000), 16_000);
        int from = (int) ((SineSweeps.startSeconds(1) + 2) * 16_000);
        int to = (int) ((SineSweeps.startSeconds(5) - 0.3) * 16_000);
        SweepReading reading = SweepAnalysis.of(Arrays.copyOfRange(all, from, to), 16_000).orElseThrow();
        assertThat(reading.levels().stream().map(SweepReading.Level::sentDbfs)).containsExactly(-30.0, -24.0, -18.0);
        assertWithin(0.1, reading, 16_000);
    }

    @Test
    void aRecordingThatItselfReachesFullScaleSaysNothingAboutTheBox() {
        float[] heard = SineSweeps.samples(16_000);
        for (int i = 0; i < heard.length; i++) {
            heard[i] = Math.max(-1, Math.min(1, 3 * heard[i]));
        }
        SweepReading reading = SweepAnalysis.of(heard, 16_000).orElseThrow();
        assertThat(reading.levels().get(SineSweeps.COUNT - 1).isRecordingFull()).isTrue();
        assertThat(reading.overloadSentDbfs()).isEmpty();
        assertThat(reading.points().get(40).levelDb()).isCloseTo(9.54, within(0.05));
    }

    @Test
    void musicAndSilenceHoldNoSweep() {
        SplittableRandom random = new SplittableRandom(5);
        float[] noise = new float[16_000 * 20];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = (float) (random.nextDouble() - 0.5);
        }
        assertThat(SweepAnalysis.of(noise, 16_000)).isEmpty();
        assertThat(SweepAnalysis.of(new float[16_000 * 20], 16_000)).isEmpty();
        assertThat(SweepAnalysis.of(new float[100], 16_000)).isEmpty();
    }

    private static SweepReading bent(DoubleUnaryOperator curve, int rateHz) {
        float[] heard = SineSweeps.samples(rateHz);
        for (int i = 0; i < heard.length; i++) {
            heard[i] = (float) curve.applyAsDouble(heard[i]);
        }
        return SweepAnalysis.of(heard, rateHz).orElseThrow();
    }

    private static void assertWithin(double toleranceDb, SweepReading reading, int rateHz) {
        for (SweepReading.Point point : reading.points()) {
            if (point.frequencyHz() >= 25 && point.frequencyHz() <= Math.min(18_000, 0.42 * rateHz)) {
                assertThat(point.levelDb()).as("at %.0f Hz", point.frequencyHz())
                    .isCloseTo(BOX.responseDb(point.frequencyHz(), rateHz), within(toleranceDb));
            }
        }
    }

    private static float[] through(EqChain chain, float[] sent, int rateHz) {
        float[] heard = sent.clone();
        new EqProcessor(chain, rateHz).process(heard, heard.length);
        return heard;
    }
}
