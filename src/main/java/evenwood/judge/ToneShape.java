package evenwood.judge;

/**
 * A bell or shelf over the frequency axis: the simplest thing that a body, a pickup or a tone control does.
 *
 * <p>How: magnitude of the analogue prototypes H(s) of the audio EQ cookbook at a mid amount, per dB, so that any amount is
 * a multiple of it. Source: Bristow-Johnson, Audio EQ Cookbook (peaking, lowShelf, highShelf).
 *
 * @param kind     which
 * @param centreHz middle of the bell, or where a shelf has half its dB
 * @param q        width; 0.7071 for shelves is slope 1
 */
record ToneShape(Kind kind, double centreHz, double q) {
    enum Kind { BELL, LOW_SHELF, HIGH_SHELF }

    /** The amount at which the shape is taken: a fault that is plain to hear. */
    private static final double SHAPE_AT_DB = 8;

    /** What 1 dB of it does at a frequency. */
    double perDb(double frequencyHz) {
        double a = Math.pow(10, SHAPE_AT_DB / 40);
        double w = frequencyHz / centreHz;
        double power = switch (kind) {
            case BELL -> square(1 - w * w, w * a / q) / square(1 - w * w, w / (a * q));
            case LOW_SHELF -> a * a * square(a - w * w, w * Math.sqrt(a) / q) / square(1 - a * w * w, w * Math.sqrt(a) / q);
            case HIGH_SHELF -> a * a * square(1 - a * w * w, w * Math.sqrt(a) / q) / square(a - w * w, w * Math.sqrt(a) / q);
        };
        return 10 * Math.log10(power) / SHAPE_AT_DB;
    }

    private static double square(double real, double imaginary) {
        return real * real + imaginary * imaginary;
    }
}
