package evenwood.measure;

import org.hipparchus.complex.Complex;

/**
 * Lets one band through: six-pole Butterworth band-pass, −3 dB at both edges, 0 dB in the middle.
 *
 * <p>How: third-order Butterworth low-pass turned into a band-pass, then bilinear transform with both edges pre-warped;
 * three sections in direct form II transposed, double precision. Source: the order that meets IEC 61260-1 class 1 as
 * analogue prototype (order 3); digital form checked against scipy.signal.butter (BandPassFilterReferenceTest).
 * <p>Limits: class 1 up to a band centre of 0.22 of the sample rate; above, the lower skirt is too shallow.
 * <p>Thread: one owner; {@link #sumOfSquares} never allocates.
 */
final class BandPassFilter {
    /** Noise passes as through an ideal band this much wider: (π/6)/sin(π/6) for the third-order prototype. */
    static final double NOISE_WIDTH = Math.PI / 3;

    private static final int SECTIONS = 3;
    /** −600 dB: far below any sound, far above the numbers that processors compute slowly. */
    private static final double NOTHING = 1e-30;

    private final double gain;
    private final double[] a1 = new double[SECTIONS];
    private final double[] a2 = new double[SECTIONS];
    private double p1, p2, q1, q2, r1, r2;

    BandPassFilter(double sampleRateHz, double lowerHz, double upperHz) {
        double lower = 2 * Math.tan(Math.PI * lowerHz / sampleRateHz);
        double upper = 2 * Math.tan(Math.PI * upperHz / sampleRateHz);
        double centreSquared = lower * upper;
        double width = upper - lower;
        // Poles of the prototype: −1 and −1/2 ± j√3/2; each gives two poles s of s² − p·width·s + centre² = 0.
        Complex half = new Complex(-0.5, Math.sqrt(0.75)).multiply(width);
        Complex root = half.multiply(half).subtract(4 * centreSquared).sqrt();
        setSection(0, half.add(root).divide(2));
        setSection(1, half.subtract(root).divide(2));
        setSection(2, new Complex(-width, 0).add(new Complex(width * width - 4 * centreSquared, 0).sqrt()).divide(2));
        gain = 1 / Math.cbrt(responseAt(2 * Math.atan(Math.sqrt(centreSquared) / 2)));
    }

    private void setSection(int section, Complex s) {
        Complex z = s.add(2).divide(s.negate().add(2));
        a1[section] = -2 * z.getReal();
        a2[section] = z.getReal() * z.getReal() + z.getImaginary() * z.getImaginary();
    }

    /** Amplitude of the three sections (1 − z⁻²)/(1 + a1·z⁻¹ + a2·z⁻²) without gain. */
    private double responseAt(double radians) {
        Complex z1 = new Complex(Math.cos(radians), -Math.sin(radians));
        Complex z2 = z1.multiply(z1);
        double product = 1;
        for (int i = 0; i < SECTIONS; i++) {
            product *= z2.negate().add(1).norm() / z1.multiply(a1[i]).add(z2.multiply(a2[i])).add(1).norm();
        }
        return product;
    }

    /** Gain in dB at a frequency; −Infinity at 0 Hz. */
    double responseDb(double frequencyHz, double sampleRateHz) {
        return 20 * Math.log10(gain * gain * gain * responseAt(2 * Math.PI * frequencyHz / sampleRateHz));
    }

    /** Filters on from where the last call ended. [audio thread] */
    double sumOfSquares(double[] in, int frames) {
        double g = gain;
        double sum = 0;
        for (int i = 0; i < frames; i++) {
            double x = g * in[i];
            double y = x + p1;
            p1 = p2 - a1[0] * y;
            p2 = -x - a2[0] * y;
            x = g * y;
            y = x + q1;
            q1 = q2 - a1[1] * y;
            q2 = -x - a2[1] * y;
            x = g * y;
            y = x + r1;
            r1 = r2 - a1[2] * y;
            r2 = -x - a2[2] * y;
            sum += y * y;
        }
        if (sum < NOTHING * NOTHING) {
            reset();
        }
        return sum;
    }

    void reset() {
        p1 = p2 = q1 = q2 = r1 = r2 = 0;
    }
}
