package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PluckedStringTest {
    private static final double EDGE_SECONDS = 0.0001;

    @ParameterizedTest
    @CsvSource({"8000, 97.999", "8000, 329.628", "8000, 880", "44100, 97.999", "44100, 440", "48000, 146.832", "48000, 880", "96000, 220", "192000, 97.999", "192000, 659.255"})
    void aPluckedNoteHasThePitchAsked(int sampleRateHz, double hz) {
        for (double inharmonicity : new double[] {0, 6e-5}) {
            float[] note = note(sampleRateHz, hz, 3, 1, inharmonicity, 0.13, 2);
            double heard = Spectra.peakHz(note, sampleRateHz / 10, (int) (1.8 * sampleRateHz), sampleRateHz, hz);
            assertThat(Spectra.cents(heard, hz)).as("B = %s", inharmonicity).isCloseTo(0, within(0.5));
        }
    }

    @ParameterizedTest
    @CsvSource({"8000, 100, 5, 1.5", "48000, 100, 5, 1.2", "48000, 250, 3, 1", "48000, 600, 2, 0.8", "192000, 100, 4, 1", "192000, 500, 1.5, 0.5"})
    void fundamentalAndBrightPartialDecayInTheTimesAsked(int sampleRateHz, double hz, double seconds, double brightSeconds) {
        float[] note = note(sampleRateHz, hz, seconds, brightSeconds, 0, 0.13, 2);
        assertThat(decaySeconds(note, sampleRateHz, hz)).isCloseTo(seconds, within(0.1 * seconds));
        assertThat(decaySeconds(note, sampleRateHz, PluckedString.BRIGHT_HZ)).isCloseTo(brightSeconds, within(0.1 * brightSeconds));
    }

    @ParameterizedTest
    @CsvSource({"0.5, 2", "0.25, 4", "0.2, 5", "0.125, 8"})
    void harmonicsWithANodeUnderThePickStaySilent(double position, int silent) {
        float[] note = note(48_000, 110, 4, 1.5, 0, position, 2);
        double there = Spectra.amplitude(note, 4800, 48_000, 48_000, silent * 110);
        double before = Spectra.amplitude(note, 4800, 48_000, 48_000, (silent - 1) * 110);
        double after = Spectra.amplitude(note, 4800, 48_000, 48_000, (silent + 1) * 110);
        assertThat(20 * Math.log10(there / Math.max(before, after))).isLessThan(-40);
    }

    /** Ideal plucked string: the force on the bridge has harmonics sin(nπp)/n (textbook; from memory). */
    @Test
    void theFirstHarmonicsStandAsThoseOfAnIdealStringPulledThere() {
        float[] note = note(48_000, 110, 30, 25, 0, 0.15, 1.5);
        double first = Spectra.amplitude(note, 1000, 48_000, 48_000, 110);
        for (int n = 2; n <= 5; n++) {
            double expected = Math.sin(n * Math.PI * 0.15) / n / Math.sin(Math.PI * 0.15);
            double heard = Spectra.amplitude(note, 1000, 48_000, 48_000, n * 110) / first;
            assertThat(20 * Math.log10(heard / expected)).as("harmonic %d", n).isCloseTo(0, within(0.3));
        }
    }

    /** f_n = n·f·√((1 + B·n²)/(1 + B)), with f the sounding fundamental. */
    @ParameterizedTest
    @CsvSource({"48000, 98, 1e-4, 30", "96000, 98, 1e-4, 30", "48000, 220, 5e-5, 14", "16000, 147, 8e-5, 20"})
    void aStiffStringsPartialsAreSharp(int sampleRateHz, double hz, double inharmonicity, int partial) {
        double expected = partial * hz * Math.sqrt((1 + inharmonicity * partial * partial) / (1 + inharmonicity));
        float[] note = note(sampleRateHz, hz, 8, 4, inharmonicity, 0.09, 2);
        double heard = Spectra.peakHz(note, sampleRateHz / 20, sampleRateHz / 2, sampleRateHz, expected);
        assertThat(Spectra.cents(expected, partial * hz)).isGreaterThan(7);
        assertThat(Spectra.cents(heard, expected)).isCloseTo(0, within(3.0));
    }

    @Test
    void aChokedStringFallsSilentAndNeverComputesWithSubnormalNumbers() {
        PluckedString string = new PluckedString(48_000, 90);
        string.tune(110, 3, 1, 5e-5);
        string.pluck(1, 0.13, EDGE_SECONDS);
        double last = 0;
        for (int i = 0; i < 60 * 48_000; i++) {
            if (i == 4_800) {
                string.choke(0.05);
            }
            string.arrive();
            last = string.leave(0);
            assertThat(last == 0 || Math.abs(last) > 1e-30).isTrue();
            if (i % 1024 == 0) {
                string.settle();
            }
        }
        assertThat(last).isZero();
    }

    private static float[] note(int sampleRateHz, double hz, double seconds, double brightSeconds, double inharmonicity, double position, double lengthSeconds) {
        PluckedString string = new PluckedString(sampleRateHz, 90);
        string.tune(hz, seconds, brightSeconds, inharmonicity);
        string.pluck(0.5, position, EDGE_SECONDS);
        float[] out = new float[(int) (lengthSeconds * sampleRateHz)];
        for (int i = 0; i < out.length; i++) {
            string.arrive();
            out[i] = (float) string.leave(0);
        }
        return out;
    }

    /** From the level of one partial in two windows half a second apart. */
    private static double decaySeconds(float[] note, int sampleRateHz, double hz) {
        int window = sampleRateHz / 5;
        double early = Spectra.amplitude(note, sampleRateHz / 20, window, sampleRateHz, hz);
        double late = Spectra.amplitude(note, sampleRateHz / 20 + sampleRateHz / 2, window, sampleRateHz, hz);
        return 60 * 0.5 / (20 * Math.log10(early / late));
    }
}
