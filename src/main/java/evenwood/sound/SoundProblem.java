package evenwood.sound;

/**
 * Something about a sound file or device that the player can act on.
 *
 * <p>The message is one line for the player: what was being done, what was found, what to do next. No stack trace is
 * ever shown for it.
 */
public final class SoundProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean midway;

    private SoundProblem(String message, boolean midway, Throwable cause) {
        super(message, cause);
        this.midway = midway;
    }

    /** The source could not be opened or is no sound at all: nothing was measured. */
    public static SoundProblem atStart(String message, Throwable cause) {
        return new SoundProblem(message, false, cause);
    }

    public static SoundProblem atStart(String message) {
        return new SoundProblem(message, false, null);
    }

    /** The source worked and then failed: what was measured so far is kept. */
    public static SoundProblem midway(String message, Throwable cause) {
        return new SoundProblem(message, true, cause);
    }

    public boolean isMidway() {
        return midway;
    }
}
