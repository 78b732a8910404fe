package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ResonanceTest {
    @ParameterizedTest
    @ValueSource(ints = {8_000, 48_000, 192_000})
    void aModePassesItsCentreAtItsGainAndItsEdgesThreeDecibelsLower(int sampleRateHz) {
        double q = 8;
        double edgeHz = 150 * (Math.sqrt(1 + 1 / (4 * q * q)) + 1 / (2 * q));
        assertThat(gainDb(Resonance.mode(sampleRateHz, 150, q, 2), sampleRateHz, 150)).isCloseTo(6.02, within(0.02));
        assertThat(gainDb(Resonance.mode(sampleRateHz, 150, q, 2), sampleRateHz, edgeHz)).isCloseTo(3.01, within(0.05));
        assertThat(gainDb(Resonance.mode(sampleRateHz, 150, q, 2), sampleRateHz, 1500)).isLessThan(-30);
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 48_000, 192_000})
    void aBumpLiftsItsCentreAndLeavesTheRest(int sampleRateHz) {
        assertThat(gainDb(Resonance.bump(sampleRateHz, 150, 1.1, 8), sampleRateHz, 150)).isCloseTo(8, within(0.02));
        assertThat(gainDb(Resonance.bump(sampleRateHz, 150, 1.1, 8), sampleRateHz, 3000)).isCloseTo(0, within(0.05));
    }

    @ParameterizedTest
    @ValueSource(ints = {8_000, 11_025, 48_000, 192_000})
    void aBroadHighModeKeepsItsLowerEdgeAtEveryRate(int sampleRateHz) {
        double edgeHz = 2650 * (Math.sqrt(1 + 1 / (4 * 1.8 * 1.8)) - 1 / (2 * 1.8));
        assertThat(gainDb(Resonance.mode(sampleRateHz, 2650, 1.8, 1), sampleRateHz, edgeHz)).isCloseTo(-3.01, within(0.05));
    }

    private static double gainDb(Resonance filter, int sampleRateHz, double hz) {
        float[] out = new float[2 * sampleRateHz];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) filter.next(Math.sin(2 * Math.PI * hz * i / sampleRateHz));
        }
        return Spectra.rmsDb(out, sampleRateHz, 2 * sampleRateHz) + 3.0103;
    }
}
