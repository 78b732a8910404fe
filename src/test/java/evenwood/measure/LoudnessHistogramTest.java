package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Counting in bins must give what keeping every value would give. */
class LoudnessHistogramTest {
    private static final int EIGHT_HOURS_OF_BLOCKS = 8 * 3600 * 10;

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void gatedMeanAndRangeAreThoseOfAllValues(long seed) {
        double[] powers = powers(seed, 20_000);
        LoudnessHistogram histogram = new LoudnessHistogram();
        for (double power : powers) {
            histogram.add(power);
        }
        double[] gated = gated(powers, 10);
        assertThat(LoudnessMeter.lufs(histogram.gatedMeanPower(10)))
            .isCloseTo(LoudnessMeter.lufs(Arrays.stream(gated).average().orElseThrow()), within(0.01));
        // A bin on the wrong side of the gate moves the ranks, and where values are sparse a rank is worth more than a bin.
        double[] ranged = gated(powers, 20);
        assertThat(histogram.percentileDistanceLu(20, 10, 95)).isCloseTo(
            LoudnessMeter.lufs(percentile(ranged, 95)) - LoudnessMeter.lufs(percentile(ranged, 10)), within(0.05));
    }

    @Test
    void nothingAboveTheAbsoluteGateIsSilence() {
        LoudnessHistogram histogram = new LoudnessHistogram();
        histogram.add(0);
        histogram.add(power(-70.001));
        assertThat(histogram.isEmpty()).isTrue();
        assertThat(histogram.gatedMeanPower(10)).isZero();
        assertThat(histogram.percentileDistanceLu(20, 10, 95)).isZero();
        histogram.add(power(-69.999));
        assertThat(LoudnessMeter.lufs(histogram.gatedMeanPower(10))).isCloseTo(-69.999, within(1e-9));
    }

    @Test
    void whatIsLouderThanTheTopmostBinStillCountsFully() {
        LoudnessHistogram histogram = new LoudnessHistogram();
        histogram.add(power(45));
        histogram.add(power(45));
        assertThat(LoudnessMeter.lufs(histogram.gatedMeanPower(10))).isCloseTo(45, within(1e-9));
        assertThat(histogram.percentileDistanceLu(20, 10, 95)).isZero();
    }

    @Test
    void eightHoursAreAsExactAsAMinute() {
        double[] powers = powers(7, EIGHT_HOURS_OF_BLOCKS);
        LoudnessHistogram histogram = new LoudnessHistogram();
        for (double power : powers) {
            histogram.add(power);
        }
        assertThat(LoudnessMeter.lufs(histogram.gatedMeanPower(10)))
            .isCloseTo(LoudnessMeter.lufs(Arrays.stream(gated(powers, 10)).average().orElseThrow()), within(0.01));
    }

    /** Passages of several levels, some under the absolute gate, each with its own spread. */
    private static double[] powers(long seed, int count) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] powers = new double[count];
        double lufs = -30;
        double spread = 1;
        for (int i = 0; i < count; i++) {
            if (random.nextInt(200) == 0) {
                lufs = random.nextDouble(-80, -5);
                spread = random.nextDouble(0, 12);
            }
            powers[i] = power(lufs + spread * random.nextDouble(-1, 1));
        }
        return powers;
    }

    private static double power(double lufs) {
        return Math.pow(10, (lufs + 0.691) / 10);
    }

    /** ITU-R BS.1770-5 Annex 1 eq. 5–7 word for word, ascending. */
    private static double[] gated(double[] powers, double relativeGateLu) {
        double[] absolute = Arrays.stream(powers).filter(power -> LoudnessMeter.lufs(power) > -70).toArray();
        double gate = LoudnessMeter.lufs(Arrays.stream(absolute).average().orElseThrow()) - relativeGateLu;
        return Arrays.stream(absolute).filter(power -> LoudnessMeter.lufs(power) > gate).sorted().toArray();
    }

    /** EBU Tech 3342 §5: index round((n − 1)·p/100 + 1), counted from 1. */
    private static double percentile(double[] ascending, double percent) {
        return ascending[(int) Math.round((ascending.length - 1) * percent / 100 + 1) - 1];
    }
}
