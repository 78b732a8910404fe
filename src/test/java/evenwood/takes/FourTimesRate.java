package evenwood.takes;

import java.util.function.DoubleUnaryOperator;

/**
 * Bends a wave as an analogue stage before a converter would: computed at four times the rate, band-limited again.
 *
 * <p>How: a Kaiser-windowed sinc of {@value #HALF_TAPS} input samples a side (β 10, about 100 dB), cut at 0.46 of the
 * sample rate, for both ways. Source: Kaiser's window formulas, from memory; FaultsTest checks the passband.
 */
final class FourTimesRate {
    private static final int TIMES = 4;
    private static final int HALF_TAPS = 48;
    private static final double CUT = 0.46;
    private static final double BETA = 10;

    private FourTimesRate() { }

    static float[] shape(float[] x, DoubleUnaryOperator curve) {
        double[] taps = taps();
        double[] up = new double[x.length * TIMES];
        int half = HALF_TAPS * TIMES;
        for (int n = 0; n < up.length; n++) {
            double sum = 0;
            int first = Math.floorDiv(n - half + TIMES - 1, TIMES);
            int last = Math.min(x.length - 1, Math.floorDiv(n + half, TIMES));
            for (int k = Math.max(0, first); k <= last; k++) {
                sum += x[k] * taps[n - k * TIMES + half];
            }
            up[n] = curve.applyAsDouble(sum * TIMES);
        }
        float[] out = new float[x.length];
        for (int i = 0; i < out.length; i++) {
            double sum = 0;
            int from = Math.max(0, i * TIMES - half);
            int to = Math.min(up.length - 1, i * TIMES + half);
            for (int n = from; n <= to; n++) {
                sum += up[n] * taps[n - i * TIMES + half];
            }
            out[i] = (float) sum;
        }
        return out;
    }

    /** Low-pass at four times the rate with unit gain at 0 Hz. */
    private static double[] taps() {
        int half = HALF_TAPS * TIMES;
        double[] taps = new double[2 * half + 1];
        double sum = 0;
        for (int i = 0; i < taps.length; i++) {
            double t = (i - half) / (double) TIMES;
            double sinc = t == 0 ? 1 : Math.sin(2 * Math.PI * CUT * t) / (2 * Math.PI * CUT * t);
            double u = (i - half) / (double) half;
            taps[i] = sinc * bessel(BETA * Math.sqrt(1 - u * u));
            sum += taps[i];
        }
        for (int i = 0; i < taps.length; i++) {
            taps[i] /= sum;
        }
        return taps;
    }

    /** Modified Bessel function of order 0, by its power series. */
    private static double bessel(double x) {
        double sum = 1;
        double term = 1;
        for (int k = 1; k < 40; k++) {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }
        return sum;
    }
}
