package evenwood.sound;

import java.util.List;

/**
 * Something about a sound file or device that the player can act on.
 *
 * <p>{@link #trouble} and {@link #values} tell it without words (decision 0006). The message is one English line for the terminal: what was being done, what was found, what to do next. No stack trace is
 * ever shown for it.
 */
public final class SoundProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private enum Kind { AT_START, DAMAGED, BROKEN_OFF }

    private final Kind kind;
    private SoundTrouble trouble = SoundTrouble.OTHER;
    private transient List<Object> values;
    private double heardSeconds;

    private SoundProblem(String message, Kind kind, Throwable cause) {
        super(message, cause);
        this.kind = kind;
        values = List.of(message);
    }

    /** What is the matter, without words. @param newValues its name first, then what its sentence needs */
    public SoundProblem of(SoundTrouble newTrouble, Object... newValues) {
        trouble = newTrouble;
        values = List.of(newValues);
        return this;
    }

    /** So much was heard before. */
    SoundProblem after(double seconds) {
        heardSeconds = seconds;
        return this;
    }

    public SoundTrouble trouble() {
        return trouble;
    }

    /** Names and figures; the English line for {@link SoundTrouble#OTHER}. */
    public List<Object> values() {
        return values;
    }

    /** How much was heard before it happened; 0 when nothing was, or nobody counted. */
    public double heardSeconds() {
        return heardSeconds;
    }

    /** The source could not be opened or is no sound at all: nothing was measured. */
    public static SoundProblem atStart(String message, Throwable cause) {
        return new SoundProblem(message, Kind.AT_START, cause);
    }

    public static SoundProblem atStart(String message) {
        return new SoundProblem(message, Kind.AT_START, null);
    }

    /** A file is cut short or damaged by itself: reading it again ends at the same place. What was measured so far is kept. */
    public static SoundProblem damaged(String message, Throwable cause) {
        return new SoundProblem(message, Kind.DAMAGED, cause);
    }

    /** The device or disk worked and then failed: what was measured so far is kept. */
    public static SoundProblem midway(String message, Throwable cause) {
        return new SoundProblem(message, Kind.BROKEN_OFF, cause);
    }

    /** Whether anything was read before. */
    public boolean isMidway() {
        return kind != Kind.AT_START;
    }

    /** Whether it lies in the file's own content and not in the device or disk. */
    public boolean isDamage() {
        return kind == Kind.DAMAGED;
    }
}
