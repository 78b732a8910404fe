package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import org.junit.jupiter.api.Test;

/** Against scipy.signal.butter (band-pass.csv, made by band-pass.py beside it). */
class BandPassFilterReferenceTest {
    @Test
    void responseIsThatOfAnIndependentDesign() {
        assertThat(ReferenceTable.read("band-pass.csv")).hasSizeGreaterThan(50).allSatisfy(row -> {
            BandPassFilter filter = new BandPassFilter(row.number("sample_rate_hz"), row.number("lower_hz"), row.number("upper_hz"));
            assertThat(filter.responseDb(row.number("frequency_hz"), row.number("sample_rate_hz")))
                .isCloseTo(row.number("response_db"), within(1e-5));
        });
    }

    @Test
    void soundIsFilteredAsTheResponseSays() {
        ReferenceTable.read("band-pass.csv").stream().filter(row -> row.number("sample_rate_hz") == 1500).forEach(row -> {
            BandPassFilter filter = new BandPassFilter(1500, row.number("lower_hz"), row.number("upper_hz"));
            double radians = 2 * Math.PI * row.number("frequency_hz") / 1500;
            double[] sine = new double[12_000];
            for (int i = 0; i < sine.length; i++) {
                sine[i] = Math.sin(radians * i);
            }
            filter.sumOfSquares(sine, 9_000);
            double[] rest = java.util.Arrays.copyOfRange(sine, 9_000, 12_000);
            double measuredDb = 10 * Math.log10(2 * filter.sumOfSquares(rest, 3_000) / 3_000);
            assertThat(measuredDb).isCloseTo(row.number("response_db"), within(0.02));
        });
    }
}
