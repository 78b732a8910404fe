package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.withinPercentage;

import evenwood.ReferenceTable;
import org.junit.jupiter.api.Test;

/** IEC 61260-1:2014 eq. 1–5, base-10 system; nominal values ISO 266. Tolerance 1e-6 relative. */
class ThirdOctaveReferenceTest {
    private static final double PERCENT = 1e-4;

    @Test
    void centresEdgesAndNamesAgreeWithTheTable() {
        for (ReferenceTable.Row row : ReferenceTable.read("third-octave-bands.csv")) {
            ThirdOctave band = new ThirdOctave((int) row.number("index_x"));
            assertThat(band.centreHz()).as("centre of %s", band).isCloseTo(row.number("exact_mid_hz"), withinPercentage(PERCENT));
            assertThat(band.lowerHz()).as("lower edge of %s", band).isCloseTo(row.number("lower_edge_hz"), withinPercentage(PERCENT));
            assertThat(band.upperHz()).as("upper edge of %s", band).isCloseTo(row.number("upper_edge_hz"), withinPercentage(PERCENT));
            assertThat(band.nominalHz()).as("nominal of %s", band).isEqualTo(row.number("nominal_hz"));
        }
    }

    @Test
    void theToneSpectrumHasTwentySixBands() {
        assertThat(ThirdOctave.FROM_50_HZ_TO_16_KHZ).hasSize(26).isSorted();
        assertThat(ThirdOctave.FROM_50_HZ_TO_16_KHZ.get(0).nominalName()).isEqualTo("50 Hz");
        assertThat(ThirdOctave.FROM_50_HZ_TO_16_KHZ.get(25).nominalName()).isEqualTo("16 kHz");
    }

    @Test
    void everyFrequencyHasOneBand() {
        for (ThirdOctave band : ThirdOctave.range(10, 20_000)) {
            assertThat(ThirdOctave.containing(band.centreHz())).isEqualTo(band);
            assertThat(ThirdOctave.containing(band.lowerHz() * 1.000001)).isEqualTo(band);
            assertThat(ThirdOctave.containing(band.upperHz() * 0.999999)).isEqualTo(band);
            assertThat(ThirdOctave.containing(band.nominalHz())).isEqualTo(band);
        }
    }

    @Test
    void namesAreThoseOnEqualisers() {
        assertThat(ThirdOctave.containing(31.5).nominalName()).isEqualTo("31.5 Hz");
        assertThat(ThirdOctave.containing(1250).nominalName()).isEqualTo("1.25 kHz");
        assertThat(ThirdOctave.containing(6300).nominalName()).isEqualTo("6.3 kHz");
    }

    @Test
    void aBandOutsideTheTableIsRefusedInWords() {
        assertThatThrownBy(() -> new ThirdOctave(21))
            .hasMessage("third-octave band: index=21, but -20 (10 Hz) to 20 (100 kHz) are known");
        assertThatThrownBy(() -> ThirdOctave.containing(0))
            .hasMessage("third-octave band: frequencyHz=0.0, but it must be positive");
    }
}
