package evenwood.measure;

/**
 * The ear-like weighting of loudness: a shelf that lifts the treble by 4 dB, then a high-pass at 38 Hz.
 *
 * <p>In: one channel at any sample rate. Out: the sum of the squares of the weighted samples.
 * <p>How: two second-order sections in one loop, sharing their delay lines; in double precision. Source: ITU-R
 * BS.1770-5 Annex 1 Tables 1 and 2, which print 48 kHz only and ask for the same response elsewhere; the analogue
 * prototype behind those figures is that of libebur128 (it gives the printed ones back to 9·10⁻¹⁶).
 * <p>Limits: the high-pass numerator stays 1, −2, 1 as printed, so the pass band moves by up to 0.03 dB between rates
 * (KWeightingReferenceTest).
 * <p>Thread: one owner. {@link #sumOfSquares} never allocates, locks, logs, or touches files.
 */
final class KWeighting {
    private static final double SHELF_HZ = 1681.974450955533;
    private static final double SHELF_GAIN_DB = 3.999843853973347;
    private static final double SHELF_Q = 0.7071752369554196;
    private static final double SHELF_MIDDLE_EXPONENT = 0.4996667741545416;
    private static final double HIGH_PASS_HZ = 38.13547087602444;
    private static final double HIGH_PASS_Q = 0.5003270373238773;

    /** −600 dBFS, far under any sound: smaller leftovers are dropped before they become slow subnormal numbers. */
    private static final double NOTHING = 1e-30;

    private final BiquadCoefficients shelf;
    private final BiquadCoefficients highPass;
    private double x1;
    private double x2;
    private double u1;
    private double u2;
    private double y1;
    private double y2;

    KWeighting(double sampleRateHz) {
        shelf = shelf(sampleRateHz);
        highPass = highPass(sampleRateHz);
    }

    static BiquadCoefficients shelf(double sampleRateHz) {
        double k = Math.tan(Math.PI * SHELF_HZ / sampleRateHz);
        double high = Math.pow(10, SHELF_GAIN_DB / 20);
        double middle = Math.pow(high, SHELF_MIDDLE_EXPONENT);
        double d = 1 + k / SHELF_Q + k * k;
        return new BiquadCoefficients(
            (high + middle * k / SHELF_Q + k * k) / d,
            2 * (k * k - high) / d,
            (high - middle * k / SHELF_Q + k * k) / d,
            2 * (k * k - 1) / d,
            (1 - k / SHELF_Q + k * k) / d);
    }

    static BiquadCoefficients highPass(double sampleRateHz) {
        double k = Math.tan(Math.PI * HIGH_PASS_HZ / sampleRateHz);
        double d = 1 + k / HIGH_PASS_Q + k * k;
        return new BiquadCoefficients(1, -2, 1, 2 * (k * k - 1) / d, (1 - k / HIGH_PASS_Q + k * k) / d);
    }

    /** Weights the next frames and returns the sum of their squares, added one by one to {@code sum}. [audio thread] */
    double sumOfSquares(double sum, float[] samples, int from, int frames) {
        double b0 = shelf.b0();
        double b1 = shelf.b1();
        double b2 = shelf.b2();
        double a1 = shelf.a1();
        double a2 = shelf.a2();
        double c1 = highPass.a1();
        double c2 = highPass.a2();
        double x1 = this.x1;
        double x2 = this.x2;
        double u1 = this.u1;
        double u2 = this.u2;
        double y1 = this.y1;
        double y2 = this.y2;
        for (int i = from; i < from + frames; i++) {
            // The newest feedback term comes last: each next sample then waits for one multiply and one subtraction.
            double x = samples[i];
            double u = (b0 * x + b1 * x1 + b2 * x2 - a2 * u2) - a1 * u1;
            double y = (u - 2 * u1 + u2 - c2 * y2) - c1 * y1;
            sum += y * y;
            x2 = x1;
            x1 = x;
            u2 = u1;
            u1 = u;
            y2 = y1;
            y1 = y;
        }
        this.x1 = x1;
        this.x2 = x2;
        this.u1 = u1;
        this.u2 = u2;
        this.y1 = y1;
        this.y2 = y2;
        return sum;
    }

    /** Ends the endless tail after a sound; call it at fixed frames of the take, so that blocks do not matter. */
    void dropLeftovers() {
        if (Math.abs(u1) + Math.abs(u2) + Math.abs(y1) + Math.abs(y2) < NOTHING) {
            u1 = 0;
            u2 = 0;
            y1 = 0;
            y2 = 0;
        }
    }

    void reset() {
        x1 = 0;
        x2 = 0;
        u1 = 0;
        u2 = 0;
        y1 = 0;
        y2 = 0;
    }
}
