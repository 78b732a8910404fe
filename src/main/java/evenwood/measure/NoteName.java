package evenwood.measure;

/**
 * Notes of twelve-tone equal temperament by number, name and frequency.
 *
 * <p>How: f = 440·2^((m − 69)/12), m the MIDI number, C4 = 60 = middle C. Source: ISO 16:1975 (A4 = 440 Hz).
 * <p>Limits: one tuning; a band tuned to another A reads so many cents off.
 */
public final class NoteName {
    /** No note: what a silent or unclear reading carries. */
    public static final int NONE = -1;
    private static final String[] NAMES = {"C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"};
    private static final double A4_HZ = 440;
    private static final int A4_MIDI = 69;

    private NoteName() { }

    public static double frequencyHz(double midi) {
        return A4_HZ * Math.pow(2, (midi - A4_MIDI) / 12);
    }

    /** The number of a frequency, with a fraction of 0.01 for each cent; only for frequencies above 0. */
    public static double number(double frequencyHz) {
        return A4_MIDI + 12 * Math.log(frequencyHz / A4_HZ) / Math.log(2);
    }

    /** The nearest note, or {@link #NONE} for no frequency. */
    public static int nearest(double frequencyHz) {
        return frequencyHz > 0 ? (int) Math.round(number(frequencyHz)) : NONE;
    }

    /** "A4", "C#3"; the empty text for {@link #NONE}. */
    public static String of(int midi) {
        return midi < 0 ? "" : NAMES[midi % 12] + (midi / 12 - 1);
    }

    /** How far a frequency lies above another, in cents. */
    public static double cents(double frequencyHz, double referenceHz) {
        return 1200 * Math.log(frequencyHz / referenceHz) / Math.log(2);
    }
}
