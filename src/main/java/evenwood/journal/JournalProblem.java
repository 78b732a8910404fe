package evenwood.journal;

/** The journal could not do what was asked; the message is the whole line for the player, and says what to do next. */
public final class JournalProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public JournalProblem(String message) {
        super(message);
    }

    public JournalProblem(String message, Throwable cause) {
        super(message, cause);
    }
}
