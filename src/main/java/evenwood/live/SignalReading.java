package evenwood.live;

/**
 * Whether an input carries anything at all.
 *
 * @param kind  sound, or the way in which there is none
 * @param value the value the input is stuck at, full scale 1.0; 0 for all other kinds
 */
public record SignalReading(Kind kind, float value) {
    public enum Kind {
        /** Too little heard to say. */
        NOT_YET_KNOWN,
        /** The input moves, be it ever so quietly. */
        ALIVE,
        /** Exact zeros only: no converter does that by itself. */
        EXACT_ZEROS,
        /** One and the same value over and over. */
        STUCK
    }

    public static final SignalReading NOT_YET_KNOWN = new SignalReading(Kind.NOT_YET_KNOWN, 0);
    public static final SignalReading ALIVE = new SignalReading(Kind.ALIVE, 0);
    public static final SignalReading EXACT_ZEROS = new SignalReading(Kind.EXACT_ZEROS, 0);

    public boolean isDead() {
        return kind == Kind.EXACT_ZEROS || kind == Kind.STUCK;
    }
}
