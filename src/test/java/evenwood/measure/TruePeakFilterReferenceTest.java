package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.ReferenceTable.Row;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TruePeakFilterReferenceTest {
    private static final int PHASES = 4;

    static List<Row> coefficients() {
        return ReferenceTable.read("bs1770-true-peak-fir.csv");
    }

    /** All 48 printed digits of ITU-R BS.1770-5 Annex 2. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("coefficients")
    void coefficientsAreThoseOfTheTable(Row row) {
        assertThat((double) TruePeakFilter.coefficient(row.integer("phase"), row.integer("tap"))).isEqualTo(row.number("coefficient"));
        assertThat(row.number("numerator_over_8192") / 8192).isEqualTo(row.number("coefficient"));
    }

    /** Typing check: phase 3 is phase 0 backwards, phase 2 is phase 1 backwards; the gains at 0 Hz are known. */
    @Test
    void thePhasesMirrorEachOther() {
        for (int tap = 0; tap < TruePeakFilter.TAPS; tap++) {
            int mirrored = TruePeakFilter.TAPS - 1 - tap;
            assertThat(TruePeakFilter.coefficient(3, tap)).isEqualTo(TruePeakFilter.coefficient(0, mirrored));
            assertThat(TruePeakFilter.coefficient(2, tap)).isEqualTo(TruePeakFilter.coefficient(1, mirrored));
        }
        assertThat(gainAtZero(0)).isCloseTo(1.00159, within(5e-6));
        assertThat(gainAtZero(1)).isCloseTo(0.97302, within(5e-6));
        assertThat(gainAtZero(2)).isCloseTo(0.97302, within(5e-6));
        assertThat(gainAtZero(3)).isCloseTo(1.00159, within(5e-6));
    }

    static LongStream seeds() {
        return LongStream.rangeClosed(1, 50);
    }

    /** The split into even and odd parts gives the same as the standard's plain sum over 12 taps. */
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFastFormIsThePlainSum(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int frames = 20 + random.nextInt(TruePeakFilter.PASS_FRAMES - 20);
        float[] x = new float[frames];
        for (int i = 0; i < frames; i++) {
            x[i] = (float) random.nextDouble(-1, 1);
        }
        float[] highest = new float[TruePeakFilter.PASS_FRAMES];
        new TruePeakFilter().raise(highest, x, 0, frames);
        for (int n = 0; n < frames; n++) {
            double wanted = Math.abs(x[n]);
            for (int phase = 0; phase < PHASES; phase++) {
                wanted = Math.max(wanted, Math.abs(plainSum(phase, x, n)));
            }
            assertThat((double) highest[n]).isCloseTo(wanted, within(1e-6));
        }
    }

    /**
     * "Lowest, 7-sample stretch" of a separate computation: what a short transient sees at the worst phase. Here the
     * stretch is laid around the crest; where it is laid matters only at 0.35 of the sample rate, by 0.05 dB.
     */
    @ParameterizedTest(name = "{0} of the sample rate")
    @CsvSource({"0.005,0.013,0.001", "0.02,0.002,0.001", "0.05,0.004,0.001", "0.1,-0.047,0.001", "0.15,-0.093,0.003",
        "0.2,-0.096,0.001", "0.25,-0.197,0.001", "0.3,-0.091,0.001", "0.35,-0.116,0.055", "0.4,-0.264,0.001",
        "0.45,-0.632,0.001", "0.475,-4.590,0.001"})
    void theWorstReadingOfAShortStretchIsThatOfTheTable(double ofSampleRate, double lowestDb, double tolerance) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int step = 0; step < 2000; step++) {
            lowest = Math.min(lowest, highestAroundCrest(ofSampleRate, step / 2000.0));
        }
        assertThat(20 * Math.log10(lowest)).isCloseTo(lowestDb, within(tolerance));
    }

    /** Outputs 3 to 9 lie from 2½ samples before frame 0 to 3½ after it, because the filter looks 5½ samples back. */
    private static double highestAroundCrest(double ofSampleRate, double crestFrame) {
        double highest = 0;
        for (int n = 3; n <= 9; n++) {
            for (int phase = 0; phase < PHASES; phase++) {
                double sum = 0;
                for (int tap = 0; tap < TruePeakFilter.TAPS; tap++) {
                    sum += TruePeakFilter.coefficient(phase, tap) * Math.cos(2 * Math.PI * ofSampleRate * (n - tap - crestFrame));
                }
                highest = Math.max(highest, Math.abs(sum));
            }
        }
        return highest;
    }

    private static double plainSum(int phase, float[] x, int n) {
        double sum = 0;
        for (int tap = 0; tap < TruePeakFilter.TAPS && tap <= n; tap++) {
            sum += TruePeakFilter.coefficient(phase, tap) * (double) x[n - tap];
        }
        return sum;
    }

    private static double gainAtZero(int phase) {
        double gain = 0;
        for (int tap = 0; tap < TruePeakFilter.TAPS; tap++) {
            gain += TruePeakFilter.coefficient(phase, tap);
        }
        return gain;
    }
}
