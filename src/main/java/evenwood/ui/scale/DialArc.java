package evenwood.ui.scale;

/** Where the pointer of a knob stands: from the lower left, over the top, to the lower right, as knobs do. */
public final class DialArc {
    /** Of the whole circle; common practice of pointer knobs. */
    public static final double SWEEP_DEGREES = 270;

    private DialArc() { }

    /** Degrees clockwise from straight up: −135 at the left stop, 135 at the right one. */
    public static double degrees(double part) {
        return (Math.max(0, Math.min(1, part)) - 0.5) * SWEEP_DEGREES;
    }

    /** Which part of its way the pointer stands at when it points from the middle to a place; y grows downwards. */
    public static double part(double dx, double dy) {
        double degrees = Math.toDegrees(Math.atan2(dx, -dy));
        return Math.max(0, Math.min(1, degrees / SWEEP_DEGREES + 0.5));
    }

    /** The part of the way between two stops. */
    public static double part(double position, double least, double most) {
        return Math.max(0, Math.min(1, (position - least) / (most - least)));
    }
}
