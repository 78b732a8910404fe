package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LowRateStreamTest {
    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {8_000, 11_025, 16_000, 22_050, 24_000, 32_000, 44_100, 48_000, 64_000, 88_200, 96_000, 176_400, 192_000})
    void itKeepsTheLowEndTrueAtFiveToEightKilohertz(int rateHz) {
        LowRateStream stream = new LowRateStream(new HopGrid(rateHz));
        assertThat(stream.rateHz()).isBetween(5_500.0, 8_000.0);
        assertThat(stream.topHz()).isGreaterThan(2_200);
        for (double share : new double[] {0.01, 0.3, 0.7, 0.999}) {
            assertThat(passed(rateHz, share * stream.topHz())).isCloseTo(0, within(0.005));
        }
    }

    @ParameterizedTest(name = "{0} Hz")
    @ValueSource(ints = {11_025, 16_000, 44_100, 48_000, 96_000, 192_000})
    void whatWouldFoldIntoTheLowEndIsSeventyDecibelsDown(int rateHz) {
        LowRateStream stream = new LowRateStream(new HopGrid(rateHz));
        for (double hz = stream.rateHz() - stream.topHz(); hz < rateHz / 2.0; hz += rateHz / 37.0) {
            double folded = Math.abs(hz - stream.rateHz() * Math.round(hz / stream.rateHz()));
            if (folded < stream.topHz()) {
                assertThat(passed(rateHz, hz)).isLessThan(-70);
            }
        }
    }

    /** RMS at the low rate over RMS of the tone put in, in dB, when the filters have filled. */
    private static double passed(int rateHz, double hz) {
        HopGrid grid = new HopGrid(rateHz);
        LowRateStream stream = new LowRateStream(grid);
        float[] in = new float[grid.hopFrames()];
        float[] out = new float[LowRateStream.FRAMES_PER_HOP];
        double squares = 0;
        int counted = 0;
        for (int hop = 0; hop < 40; hop++) {
            for (int i = 0; i < in.length; i++) {
                in[i] = (float) Math.sin(2 * Math.PI * hz * (hop * (double) in.length + i) / rateHz);
            }
            stream.accept(in, 0, out, 0);
            for (int i = 0; i < out.length && hop > 0; i++) {
                double window = Math.sin(Math.PI * (counted + 0.5) / (39 * out.length));
                squares += out[i] * out[i] * window * window;
                counted++;
            }
        }
        return 10 * Math.log10(squares / (counted * 0.25));
    }
}
