package evenwood.journal;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;

/** The journal could not do what was asked; the message is the whole line for the player, and says what to do next. */
public final class JournalProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean midway;

    public JournalProblem(String message) {
        this(message, null);
    }

    public JournalProblem(String message, Throwable cause) {
        this(message, cause, false);
    }

    private JournalProblem(String message, Throwable cause, boolean midway) {
        super(message, cause);
        this.midway = midway;
    }

    /** A file that was to be made of the journal: there can be none of that name, or the disk took not all of it. */
    static JournalProblem unwritten(String what, Path file, IOException problem) {
        boolean refused = problem instanceof FileSystemException;
        return new JournalProblem(what + ": " + file + " cannot be written " + (refused ? "(" : "to its end (") + problem.getMessage()
            + "); choose another folder" + (refused ? "" : " or disk"), problem, !refused);
    }

    /** Whether something that worked failed on the way. */
    public boolean isMidway() {
        return midway;
    }
}
