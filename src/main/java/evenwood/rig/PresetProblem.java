package evenwood.rig;

/** A wrong preset or rig file; the message is one line naming file, line and field, and what to do next. */
public final class PresetProblem extends RuntimeException {
    private static final long serialVersionUID = 1L;

    PresetProblem(String message) {
        super(message);
    }

    static PresetProblem at(String file, int line, String field, String found, String allowed) {
        return new PresetProblem(file + ", line " + line + ", " + field + ": " + found + ", but " + allowed);
    }
}
