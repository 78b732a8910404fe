package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

class LoadedPickupRuleTest {
    private static final Finding QUIET = new Finding(Fault.TOO_QUIET, Severity.CLEAR, 0.9, Statement.of("too-quiet.evidence", 1.0, 2.0, 3.0, 4.0));
    private static final Finding THIN = new Finding(Fault.THIN, Severity.CLEAR, 0.9, Statement.of("thin.instrument", 1.0, 2.0, 3.0, 4.0));

    @Test
    void aFirstOrderSlopeWithALowLevelIsALoadedPickup() {
        // 1.2 nF into 100 kΩ: 1/(2πRC) = 1326 Hz.
        double cornerHz = 1 / (2 * Math.PI * 100e3 * 1.2e-9);
        Finding finding = LoadedPickupRule.finding(comparison(hz -> -10 * Math.log10(1 + Math.pow(cornerHz / hz, 2))), List.of(QUIET, THIN)).orElseThrow();
        assertThat(finding.fault()).isEqualTo(Fault.LOADED_PICKUP);
        assertThat(finding.probability()).isBetween(0.5, 0.85);
        assertThat((Double) finding.evidence().figures().get(0)).isBetween(1100.0, 1600.0);
    }

    @Test
    void neitherThinNorQuietAloneIsOne() {
        ToneComparison lacking = comparison(hz -> -10 * Math.log10(1 + Math.pow(1000 / hz, 2)));
        assertThat(LoadedPickupRule.finding(lacking, List.of(THIN))).isEmpty();
        assertThat(LoadedPickupRule.finding(lacking, List.of(QUIET))).isEmpty();
    }

    @Test
    void aToneThatNoCornerExplainsIsNone() {
        assertThat(LoadedPickupRule.finding(comparison(hz -> 0), List.of(QUIET, THIN))).isEqualTo(Optional.empty());
    }

    private static ToneComparison comparison(DoubleUnaryOperator differenceDb) {
        return new ToneComparison(ToneComparison.Against.INSTRUMENT, "steel-string-guitar", 82.4, ToneSpread.OF_INSTRUMENTS, Map.of(),
            new ToneDifference(ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream()
                .map(band -> new ToneDifference.Band(band, differenceDb.applyAsDouble(band.centreHz()), 6, 4, 1)).toList()));
    }
}
