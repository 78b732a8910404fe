package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.ReferenceTable;
import evenwood.measure.BiquadCoefficients;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The audio EQ cookbook's filters against a printed table and against scipy. */
class EqFilterReferenceTest {
    private static final Map<String, FilterKind> KINDS = Map.of("peaking", FilterKind.PEAK, "lowshelf", FilterKind.LOW_SHELF,
        "highshelf", FilterKind.HIGH_SHELF, "notch", FilterKind.NOTCH, "highpass", FilterKind.HIGH_PASS, "lowpass", FilterKind.LOW_PASS);

    static Stream<ReferenceTable.Row> cookbookRows() {
        return ReferenceTable.read("biquad-checks.csv").stream().filter(row -> KINDS.containsKey(row.text("type")));
    }

    /** Cookbook formulas in double precision, cross-checked by an independent frequency response; 1e-12 and 0.001 dB. */
    @ParameterizedTest
    @MethodSource("cookbookRows")
    void coefficientsAndMagnitudesAreTheCookbooks(ReferenceTable.Row row) {
        double gainDb = row.number("gain_db");
        double q = row.text("q").isEmpty() ? qOfSlope(row.number("slope_s"), gainDb) : row.number("q");
        EqFilter filter = new EqFilter(KINDS.get(row.text("type")), row.number("f0_hz"), q, gainDb, 2);
        BiquadCoefficients section = filter.sections(row.number("fs_hz")).get(0);
        assertThat(new double[] {section.b0(), section.b1(), section.b2(), section.a1(), section.a2()})
            .containsExactly(new double[] {row.number("b0"), row.number("b1"), row.number("b2"), row.number("a1"), row.number("a2")}, within(1e-12));
        for (int i = 1; i <= 5; i++) {
            double wanted = row.number("mag" + i + "_db");
            if (wanted > -200) {
                assertThat(filter.responseDb(row.number("f" + i + "_hz"), row.number("fs_hz"))).isCloseTo(wanted, within(0.001));
            }
        }
    }

    /** filters.py: analogue prototypes discretised by scipy, Butterworth filters designed by scipy. */
    @ParameterizedTest
    @MethodSource("kinds")
    void responsesAreScipys(FilterKind kind) {
        List<ReferenceTable.Row> rows = ReferenceTable.read("filters.csv").stream().filter(row -> row.text("kind").equals(kind.name())).toList();
        assertThat(rows).hasSizeGreaterThan(100);
        for (ReferenceTable.Row row : rows) {
            EqFilter filter = new EqFilter(kind, row.number("frequency_hz"), row.number("q"), row.number("gain_db"), row.integer("order"));
            assertThat(filter.responseDb(row.number("at_hz"), row.number("sample_rate_hz"))).as(row.toString())
                .isCloseTo(row.number("response_db"), within(0.001));
        }
    }

    static FilterKind[] kinds() {
        return FilterKind.values();
    }

    /** The cookbook's relation between shelf slope and Q: 1/Q = √((A + 1/A)(1/S − 1) + 2). */
    private static double qOfSlope(double slope, double gainDb) {
        double a = Math.pow(10, gainDb / 40);
        return 1 / Math.sqrt((a + 1 / a) * (1 / slope - 1) + 2);
    }
}
