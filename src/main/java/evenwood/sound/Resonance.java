package evenwood.sound;

/**
 * A second-order filter for the demo's body, pickup and room: a lone resonance or a bump on a flat response.
 *
 * <p>How: the audio EQ cookbook's band-pass with 0 dB peak and its peaking filter (R. Bristow-Johnson, from memory;
 * responses checked in ResonanceTest), transposed direct form II in double precision. A mode keeps its centre and its
 * lower edge at every rate; what the rate has no room for is lost above.
 * <p>Thread: one owner.
 */
final class Resonance {
    private static final double SILENT = 1e-20;

    private final double b0;
    private final double b1;
    private final double b2;
    private final double a1;
    private final double a2;
    private double first;
    private double second;

    private Resonance(double b0, double b1, double b2, double a0, double a1, double a2) {
        this.b0 = b0 / a0;
        this.b1 = b1 / a0;
        this.b2 = b2 / a0;
        this.a1 = a1 / a0;
        this.a2 = a2 / a0;
    }

    /** Lets only the mode through, at the given gain. */
    static Resonance mode(int sampleRateHz, double hz, double q, double gain) {
        double omega = 2 * Math.PI * hz / sampleRateHz;
        double lowerEdgeHz = hz * (Math.sqrt(1 + 1 / (4 * q * q)) - 1 / (2 * q));
        double edge = Math.tan(Math.PI * lowerEdgeHz / sampleRateHz) / Math.tan(omega / 2);
        double alpha = Math.sin(omega) * (1 / edge - edge) / 2;
        return new Resonance(gain * alpha, 0, -gain * alpha, 1 + alpha, -2 * Math.cos(omega), 1 - alpha);
    }

    /** Lifts the surroundings of a frequency by so many decibels. */
    static Resonance bump(int sampleRateHz, double hz, double q, double liftDb) {
        double omega = 2 * Math.PI * hz / sampleRateHz;
        double alpha = Math.sin(omega) / (2 * q);
        double a = Math.pow(10, liftDb / 40);
        double middle = -2 * Math.cos(omega);
        return new Resonance(1 + alpha * a, middle, 1 - alpha * a, 1 + alpha / a, middle, 1 - alpha / a);
    }

    double next(double x) {
        double y = b0 * x + first;
        first = b1 * x - a1 * y + second;
        second = b2 * x - a2 * y;
        return y;
    }

    /** Clears what has died away. [now and then] */
    void settle() {
        if (Math.abs(first) < SILENT && Math.abs(second) < SILENT) {
            first = 0;
            second = 0;
        }
    }
}
