package evenwood.measure;

import evenwood.sound.Decibels;

/**
 * One second-order filter section: what it is, apart from any state.
 *
 * <p>How: y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2], with a0 = 1.
 */
public record BiquadCoefficients(double b0, double b1, double b2, double a1, double a2) {

    /** Gain for a sine that lasts for ever: |H(e^jω)| in decibels; −Infinity at a zero on the unit circle. */
    public double responseDb(double frequencyHz, double sampleRateHz) {
        double w = 2 * Math.PI * frequencyHz / sampleRateHz;
        return Decibels.ofPower(power(b0, b1, b2, w) / power(1, a1, a2, w));
    }

    private static double power(double c0, double c1, double c2, double w) {
        double re = c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w);
        double im = c1 * Math.sin(w) + c2 * Math.sin(2 * w);
        return re * re + im * im;
    }
}
