package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Against scipy; the script beside the table makes the same series. */
class TheilSenReferenceTest {
    static List<ReferenceTable.Row> rows() {
        return ReferenceTable.read("theil-sen.csv");
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rows")
    void slopeAndIntervalAgree(ReferenceTable.Row row) {
        int n = row.integer("n");
        double[] days = new double[n];
        double[] values = new double[n];
        series(row.integer("seed"), row.number("slope"), Boolean.parseBoolean(row.text("ties")), days, values);
        TheilSen line = TheilSen.of(days, values, row.number("confidence"));
        assertThat(line.perDay()).isCloseTo(row.number("medslope"), within(1e-12));
        assertThat(line.lowest()).isCloseTo(row.number("low"), within(1e-12));
        assertThat(line.highest()).isCloseTo(row.number("high"), within(1e-12));
    }

    @Test
    void manyPointsAreGroupedAndTellTheSame() {
        double[] days = new double[10_000];
        double[] values = new double[10_000];
        series(7, 0.001, false, days, values);
        TheilSen line = TheilSen.of(days, values, 0.99);
        assertThat(line.perDay()).isCloseTo(0.001, within(2e-5));
        assertThat(line.lowest()).isLessThan(0.001).isGreaterThan(0.00095);
        assertThat(line.highest()).isGreaterThan(0.001).isLessThan(0.00105);
    }

    private static void series(long seed, double slope, boolean ties, double[] days, double[] values) {
        long[] state = {seed};
        double day = 0;
        for (int i = 0; i < days.length; i++) {
            day += ties && uniform(state) < 0.3 ? 0 : 1 + 3 * uniform(state);
            double noise = uniform(state) + uniform(state) + uniform(state) - 1.5;
            double value = slope * day + 2 * noise;
            days[i] = day;
            values[i] = ties ? Math.rint(value) : value;
        }
    }

    private static double uniform(long[] state) {
        state[0] = (1103515245L * state[0] + 12345) % 2147483648L;
        return state[0] / 2147483648.0;
    }
}
