package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.ReferenceTable;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Right and wrong connections with their sources, {@code reference/connections.csv}: every one must get its verdict. */
class ConnectionTableReferenceTest {
    static List<ReferenceTable.Row> rows() {
        return ReferenceTable.read("connections.csv");
    }

    @ParameterizedTest
    @MethodSource("rows")
    void theVerdictIsTheTables(ReferenceTable.Row row) {
        List<WiringVerdict> verdicts = WiringRules.verdicts(ChainAnalysis.of(Plugged.in(row.text("chain")), row.number("lowest_hz")));
        Fit worst = WiringRules.worst(verdicts);
        assertThat(worst).as("%s", verdicts).isEqualTo(Fit.valueOf(row.text("fit").toUpperCase(Locale.ROOT)));
        if (worst != Fit.RIGHT) {
            assertThat(verdicts).filteredOn(verdict -> verdict.fit() == worst).extracting(verdict -> verdict.fault().id()).contains(row.text("fault"));
        }
        assertThat(verdicts).isSortedAccordingTo(WiringVerdict.WORST_FIRST);
        assertThat(verdicts).extracting(WiringVerdict::fit).as("right is said by saying nothing").doesNotContain(Fit.RIGHT);
    }

    /** A verdict that no row shows may be wrong unseen. A supply too weak for its box has its own test: no input preset has one. */
    @Test
    void everyFaultIsInTheTable() {
        assertThat(rows()).extracting(row -> row.text("fault")).contains(java.util.Arrays.stream(WiringFault.values())
            .filter(fault -> fault != WiringFault.PHANTOM_WEAK).sorted(Comparator.naturalOrder()).map(WiringFault::id).toArray(String[]::new));
        assertThat(rows()).hasSizeGreaterThanOrEqualTo(60);
    }
}
