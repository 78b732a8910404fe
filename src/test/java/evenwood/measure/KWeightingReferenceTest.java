package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.ReferenceTable.Row;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class KWeightingReferenceTest {
    private static final double SETTLING_SECONDS = 0.5;

    static List<Row> coefficients() {
        return ReferenceTable.read("k-weighting.csv");
    }

    /** 48 kHz: printed digits of ITU-R BS.1770-5 Annex 1 Tables 1 and 2; others: see the file's first line. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("coefficients")
    void coefficientsAreThoseOfTheTable(Row row) {
        BiquadCoefficients shelf = KWeighting.shelf(row.number("fs_hz"));
        assertThat(shelf.b0()).isCloseTo(row.number("s1_b0"), within(1e-12));
        assertThat(shelf.b1()).isCloseTo(row.number("s1_b1"), within(1e-12));
        assertThat(shelf.b2()).isCloseTo(row.number("s1_b2"), within(1e-12));
        assertThat(shelf.a1()).isCloseTo(row.number("s1_a1"), within(1e-12));
        assertThat(shelf.a2()).isCloseTo(row.number("s1_a2"), within(1e-12));
        BiquadCoefficients highPass = KWeighting.highPass(row.number("fs_hz"));
        assertThat(new double[] {highPass.b0(), highPass.b1(), highPass.b2()}).containsExactly(1, -2, 1);
        assertThat(highPass.a1()).isCloseTo(row.number("s2_a1"), within(1e-12));
        assertThat(highPass.a2()).isCloseTo(row.number("s2_a2"), within(1e-12));
    }

    static List<Row> magnitudes() {
        return ReferenceTable.read("k-weighting-magnitudes.csv");
    }

    /** Magnitudes by scipy, see k-weighting-magnitudes.py beside the table. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("magnitudes")
    void theResponseIsThatOfTheTable(Row row) {
        double rate = row.number("fs_hz");
        double shelfDb = KWeighting.shelf(rate).responseDb(row.number("frequency_hz"), rate);
        double highPassDb = KWeighting.highPass(rate).responseDb(row.number("frequency_hz"), rate);
        assertThat(shelfDb).isCloseTo(row.number("stage1_db"), within(0.001));
        assertThat(highPassDb).isCloseTo(row.number("stage2_db"), within(0.001));
        assertThat(shelfDb + highPassDb).isCloseTo(row.number("k_db"), within(0.001));
    }

    static Stream<Row> audibleMagnitudes() {
        return magnitudes().stream().filter(row -> row.number("frequency_hz") < 0.45 * row.number("fs_hz"));
    }

    /** The running filter, not only its coefficients: the level of a sine that went through it. */
    @ParameterizedTest(name = "{0}")
    @MethodSource("audibleMagnitudes")
    void aSineComesOutAsTheTableSays(Row row) {
        int rate = row.integer("fs_hz");
        double omega = 2 * Math.PI * row.number("frequency_hz") / rate;
        int settling = (int) (SETTLING_SECONDS * rate);
        // About one second of whole periods, so that the mean square of the sine is one half.
        int periods = (int) Math.round(row.number("frequency_hz"));
        int frames = (int) Math.round(periods * 2 * Math.PI / omega);
        float[] sine = new float[settling + frames];
        for (int i = 0; i < sine.length; i++) {
            sine[i] = (float) Math.sin(omega * i);
        }
        KWeighting weighting = new KWeighting(rate);
        weighting.sumOfSquares(0, sine, 0, settling);
        double meanSquare = weighting.sumOfSquares(0, sine, settling, frames) / frames;
        assertThat(10 * Math.log10(2 * meanSquare)).isCloseTo(row.number("k_db"), within(0.001));
    }
}
