package evenwood.measure;

/** A linear-phase low-pass of 1025 taps with Kaiser window, β = 10, for making test signals; keeps the length. */
final class KaiserLowPass {
    private static final int TAPS = 1025;
    private static final double BETA = 10;

    private KaiserLowPass() { }

    /** @param cutOff in cycles a sample, 0 to 0.5 */
    static double[] filtered(double[] signal, double cutOff) {
        double[] taps = taps(cutOff);
        double[] out = new double[signal.length];
        for (int n = 0; n < out.length; n++) {
            int first = Math.max(0, n + TAPS / 2 - signal.length + 1);
            int last = Math.min(TAPS - 1, n + TAPS / 2);
            for (int k = first; k <= last; k++) {
                out[n] += taps[k] * signal[n + TAPS / 2 - k];
            }
        }
        return out;
    }

    private static double[] taps(double cutOff) {
        double[] taps = new double[TAPS];
        double sum = 0;
        for (int k = 0; k < TAPS; k++) {
            double x = k - TAPS / 2;
            double sinc = x == 0 ? 2 * cutOff : Math.sin(2 * Math.PI * cutOff * x) / (Math.PI * x);
            double along = 2 * x / (TAPS - 1);
            taps[k] = sinc * besselI0(BETA * Math.sqrt(1 - along * along)) / besselI0(BETA);
            sum += taps[k];
        }
        for (int k = 0; k < TAPS; k++) {
            taps[k] /= sum;
        }
        return taps;
    }

    private static double besselI0(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-17 * sum; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }
}
