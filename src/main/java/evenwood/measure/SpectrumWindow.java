package evenwood.measure;

/**
 * The shape a stretch of sound is faded with before its spectrum is taken, and what that costs.
 *
 * <p>How: periodic sum of cosines, w[n] = Σ (−1)^k a_k cos(2πkn/N), highest value 1. Source of the coefficients and of
 * the figures in the test: Harris, Proc. IEEE 66(1), 1978; the flat top is HFT70 of Heinzel, Rüdiger and Schilling
 * 2002 (SpectrumWindowReferenceTest).
 * <p>Which for what: Hann with half overlap for noise and band levels; Blackman–Harris to tell close lines apart when
 * one is far louder; the flat top to read the level of a sine wherever it lies between bins.
 */
public enum SpectrumWindow {
    HANN(0.5, 0.5),
    BLACKMAN_HARRIS(0.35875, 0.48829, 0.14128, 0.01168),
    FLAT_TOP(0.240186, 0.4582652806, 0.2578372692, 0.04371145015);

    private final double[] cosines;

    SpectrumWindow(double... cosines) {
        this.cosines = cosines;
    }

    /** A fresh array of the window's values. */
    public float[] ofSize(int frames) {
        float[] window = new float[frames];
        for (int n = 0; n < frames; n++) {
            window[n] = (float) value(n / (double) frames);
        }
        return window;
    }

    /** What the window does to the amplitude of a sine in the middle of a bin: mean(w). */
    public double coherentGain() {
        return cosines[0];
    }

    /** Mean of w²: what the window does to the power of noise. */
    public double meanSquare() {
        double sum = cosines[0] * cosines[0];
        for (int k = 1; k < cosines.length; k++) {
            sum += cosines[k] * cosines[k] / 2;
        }
        return sum;
    }

    /** Width in bins of the rectangular filter that would pass as much noise. */
    public double noiseBandwidthBins() {
        return meanSquare() / (cosines[0] * cosines[0]);
    }

    private double value(double phase) {
        double sum = 0;
        for (int k = cosines.length - 1; k >= 0; k--) {
            sum += (k % 2 == 0 ? 1 : -1) * cosines[k] * Math.cos(2 * Math.PI * k * phase);
        }
        return sum;
    }
}
