package evenwood.measure;

/**
 * Halves the sample rate: a linear-phase half-band low-pass, then every second sample.
 *
 * <p>In: stretches of an even number of frames. Out: half as many.
 * <p>How: windowed sinc with a Kaiser window for 80 dB (β = 7.857); every second coefficient is zero, the middle one
 * one half. Length from N = (A − 7.95) / (14.36 Δf). Source: Kaiser 1974 (from memory). The
 * formula is for long filters; the shortest ones here reach 70 dB (LowRateStreamTest).
 * <p>Thread: one owner. {@link #accept} never allocates.
 */
final class HalfBandDecimator {
    private static final double ATTENUATION_DB = 80;
    private static final double KAISER_BETA = 0.1102 * (ATTENUATION_DB - 8.7);

    private final float[] tapPairs;
    private final float[] line;
    private final int history;

    /** @param passEdge highest frequency to keep, as a share of the incoming sample rate, below one quarter */
    HalfBandDecimator(double passEdge, int mostFrames) {
        double transition = 0.5 - 2 * passEdge;
        int pairs = (int) Math.ceil(((ATTENUATION_DB - 7.95) / (14.36 * transition) / 2 + 1) / 2);
        int reach = 2 * pairs - 1;
        tapPairs = new float[pairs];
        double sum = 0;
        double[] exact = new double[pairs];
        for (int j = 0; j < pairs; j++) {
            int m = 2 * j + 1;
            double ratio = m / (reach + 1.0);
            exact[j] = Math.sin(Math.PI * m / 2) / (Math.PI * m)
                * bessel(KAISER_BETA * Math.sqrt(1 - ratio * ratio)) / bessel(KAISER_BETA);
            sum += 2 * exact[j];
        }
        for (int j = 0; j < pairs; j++) {
            tapPairs[j] = (float) (exact[j] * 0.5 / sum);
        }
        history = 2 * reach;
        line = new float[history + mostFrames];
    }

    /** Reads {@code frames} (even) from {@code in} and writes half as many to {@code out}. [audio thread] */
    void accept(float[] in, int from, int frames, float[] out) {
        System.arraycopy(in, from, line, history, frames);
        int centre = history / 2 + 1;
        for (int i = 0; i < frames / 2; i++) {
            int c = centre + 2 * i;
            float y = 0.5f * line[c];
            for (int j = 0, m = 1; j < tapPairs.length; j++, m += 2) {
                y += tapPairs[j] * (line[c - m] + line[c + m]);
            }
            out[i] = y;
        }
        System.arraycopy(line, frames, line, 0, history);
    }

    /** How late the output is, in frames of the input. */
    int delayFrames() {
        return history / 2;
    }

    void reset() {
        java.util.Arrays.fill(line, 0f);
    }

    /** Modified Bessel function of the first kind, order zero, by its power series. */
    private static double bessel(double x) {
        double term = 1;
        double sum = 1;
        for (int k = 1; term > 1e-12 * sum; k++) {
            term *= (x / (2 * k)) * (x / (2 * k));
            sum += term;
        }
        return sum;
    }
}
