package evenwood.journal;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.List;

/**
 * The journal could not do what was asked; the message is the whole English line for the terminal, and says what to do next.
 * {@link #trouble} and {@link #values} tell it without words (decision 0006).
 */
public final class JournalProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final boolean midway;
    private JournalTrouble trouble = JournalTrouble.OTHER;
    private transient List<Object> values;

    public JournalProblem(String message) {
        this(message, null);
    }

    public JournalProblem(String message, Throwable cause) {
        this(message, cause, false);
    }

    private JournalProblem(String message, Throwable cause, boolean midway) {
        super(message, cause);
        this.midway = midway;
        values = List.of(message);
    }

    /** What is the matter, without words. @param newValues its name first, then what its sentence needs */
    JournalProblem of(JournalTrouble newTrouble, Object... newValues) {
        trouble = newTrouble;
        values = List.of(newValues);
        return this;
    }

    public JournalTrouble trouble() {
        return trouble;
    }

    /** Names and figures; the whole line for {@link JournalTrouble#OTHER}. */
    public List<Object> values() {
        return values;
    }

    /** A file that was to be made of the journal: there can be none of that name, or the disk took not all of it. */
    static JournalProblem unwritten(String what, Path file, IOException problem) {
        boolean refused = problem instanceof FileSystemException;
        return new JournalProblem(what + ": " + file + " cannot be written " + (refused ? "(" : "to its end (") + problem.getMessage()
            + "); choose another folder" + (refused ? "" : " or disk"), problem, !refused).of(JournalTrouble.UNWRITTEN, file.toString());
    }

    /** Whether something that worked failed on the way. */
    public boolean isMidway() {
        return midway;
    }
}
