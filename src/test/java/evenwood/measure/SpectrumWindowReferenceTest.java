package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Window figures computed independently (windows.csv, N = 1024), which agree with Harris 1978 Table 1 and Heinzel 2002. */
class SpectrumWindowReferenceTest {
    private static final int SIZE = 1024;

    @ParameterizedTest(name = "{0} is {1} of the table")
    @CsvSource({"HANN, Hann", "BLACKMAN_HARRIS, Blackman-Harris 4-term", "FLAT_TOP, HFT70 flat-top"})
    void figuresAgreeWithTheTable(SpectrumWindow window, String name) {
        ReferenceTable.Row row = ReferenceTable.read("windows.csv").stream()
            .filter(candidate -> candidate.text("window").equals(name)).findFirst().orElseThrow();
        float[] w = window.ofSize(SIZE);
        double centreBin = magnitude(w, 0);
        double meanSquare = 0;
        for (float value : w) {
            meanSquare += (double) value * value / SIZE;
        }
        assertThat(centreBin / SIZE).isCloseTo(row.number("coherent_gain"), within(1e-5));
        assertThat(window.coherentGain()).isCloseTo(row.number("coherent_gain"), within(1e-5));
        assertThat(window.noiseBandwidthBins()).isCloseTo(row.number("enbw_bins"), within(1e-3));
        assertThat(window.meanSquare()).isCloseTo(meanSquare, within(1e-6));
        assertThat(-20 * Math.log10(magnitude(w, 0.5) / centreBin)).isCloseTo(row.number("scalloping_loss_db"), within(0.01));
        assertThat(highestSideLobeDb(w, row.number("first_null_bins"))).isCloseTo(row.number("highest_sidelobe_db"), within(0.3));
        assertThat(overlapCorrelationPercent(w, SIZE / 2)).isCloseTo(row.number("overlap_correlation_50pct"), within(0.01));
        assertThat(overlapCorrelationPercent(w, SIZE / 4)).isCloseTo(row.number("overlap_correlation_75pct"), within(0.01));
    }

    private static double highestSideLobeDb(float[] w, double firstNullBins) {
        double highest = 0;
        for (double bin = firstNullBins; bin < 60; bin += 0.05) {
            highest = Math.max(highest, magnitude(w, bin));
        }
        return 20 * Math.log10(highest / magnitude(w, 0));
    }

    private static double overlapCorrelationPercent(float[] w, int shift) {
        double both = 0;
        double all = 0;
        for (int i = 0; i < SIZE; i++) {
            all += (double) w[i] * w[i];
            both += i + shift < SIZE ? (double) w[i] * w[i + shift] : 0;
        }
        return 100 * both / all;
    }

    private static double magnitude(float[] w, double bin) {
        double re = 0;
        double im = 0;
        for (int i = 0; i < SIZE; i++) {
            re += w[i] * Math.cos(2 * Math.PI * bin * i / SIZE);
            im += w[i] * Math.sin(2 * Math.PI * bin * i / SIZE);
        }
        return Math.hypot(re, im);
    }
}
