package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import org.junit.jupiter.api.Test;

/** IEC 61672-1:2013 table 3 (design goals) and Annex E (formula). */
class WeightingReferenceTest {
    @Test
    void analyticValuesAgreeAtAllThirtyFourFrequencies() {
        assertThat(ReferenceTable.read("a-weighting.csv")).hasSize(34).allSatisfy(row -> {
            double hz = row.number("exact_hz");
            assertThat(Weighting.A.gainDb(hz)).isCloseTo(row.number("A_analytic_db"), within(1e-4));
            assertThat(Weighting.C.gainDb(hz)).isCloseTo(row.number("C_analytic_db"), within(1e-4));
            assertThat(Weighting.Z.gainDb(hz)).isEqualTo(row.number("Z_db"));
        });
    }

    @Test
    void roundedValuesAreThoseOfTheStandard() {
        assertThat(ReferenceTable.read("a-weighting.csv")).allSatisfy(row -> {
            double hz = row.number("exact_hz");
            assertThat(Math.rint(Weighting.A.gainDb(hz) * 10) / 10).isEqualTo(row.number("A_table_db"), within(1e-9));
            assertThat(Math.rint(Weighting.C.gainDb(hz) * 10) / 10).isEqualTo(row.number("C_table_db"), within(1e-9));
        });
    }

    @Test
    void everyValueLiesInsideClassOneOfTheNarrowerEdition() {
        assertThat(ReferenceTable.read("a-weighting.csv")).allSatisfy(row -> {
            double errorDb = Weighting.A.gainDb(row.number("exact_hz")) - row.number("A_table_db");
            assertThat(errorDb).isBetween(row.number("class1_2013_lower_db"), row.number("class1_2013_upper_db"));
        });
    }

    @Test
    void powerGainIsTheSameInPlainNumbers() {
        assertThat(10 * Math.log10(Weighting.A.powerGain(100))).isCloseTo(Weighting.A.gainDb(100), within(1e-9));
        assertThat(Weighting.A.powerGain(1000)).isEqualTo(1);
        assertThat(Weighting.A.gainDb(0)).isEqualTo(Double.NEGATIVE_INFINITY);
    }
}
