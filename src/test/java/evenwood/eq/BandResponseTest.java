package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.ThirdOctave;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandResponseTest {
    private static final int FINE = 2000;

    @ParameterizedTest(name = "{0} at {1} Hz, Q {2}, {3} dB")
    @CsvSource({"PEAK, 420, 1, -9", "PEAK, 1010, 5, 12", "PEAK, 97, 8, -15", "LOW_SHELF, 120, 0.7071, 10", "HIGH_SHELF, 4000, 0.7071, -10",
        "HIGH_PASS, 90, 0.7071, 0", "NOTCH, 300, 6, 0"})
    void aBandIsTheMeanPowerOverIt(FilterKind kind, double hz, double q, double gainDb) {
        EqFilter filter = new EqFilter(kind, hz, q, gainDb, 2);
        double[] bands = Differences.RESPONSE.db(filter);
        for (int i = 0; i < bands.length; i++) {
            assertThat(bands[i]).as(Differences.BANDS.get(i).nominalName()).isCloseTo(integral(filter, Differences.BANDS.get(i)), within(0.25));
        }
    }

    private static double integral(EqFilter filter, ThirdOctave band) {
        double power = 0;
        for (int i = 0; i < FINE; i++) {
            double hz = band.lowerHz() * Math.pow(band.upperHz() / band.lowerHz(), (i + 0.5) / FINE);
            power += Math.pow(10, filter.responseDb(hz, Differences.SAMPLE_RATE_HZ) / 10) / FINE;
        }
        return 10 * Math.log10(power);
    }
}
