package evenwood.measure;

/**
 * The power spectrum of a short stretch, looked up at any frequency.
 *
 * <p>How: mean over a twelfth of an octave of the transform's bins, straight between them; the stretch is padded with zeros,
 * so that bins lie close.
 */
final class PowerAtFrequency {
    private static final int LOOKS = 5;
    private final float[] power;
    private final double binHz;

    /** @param stretch a power of two; used up */
    PowerAtFrequency(float[] stretch, int sampleRateHz) {
        SingleThreadTransform.ofSize(stretch.length).realForward(stretch);
        binHz = (double) sampleRateHz / stretch.length;
        power = new float[stretch.length / 2];
        for (int bin = 1; bin < power.length; bin++) {
            power[bin] = stretch[2 * bin] * stretch[2 * bin] + stretch[2 * bin + 1] * stretch[2 * bin + 1];
        }
    }

    double at(double hz) {
        double sum = 0;
        for (int look = 0; look < LOOKS; look++) {
            double bin = hz * Math.pow(2, ((look + 0.5) / LOOKS - 0.5) / SweepReading.POINTS_PER_OCTAVE) / binHz;
            int below = Math.min((int) bin, power.length - 2);
            double part = Math.min(1, bin - below);
            sum += (1 - part) * power[below] + part * power[below + 1];
        }
        return sum / LOOKS;
    }
}
