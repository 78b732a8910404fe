package evenwood.cli;

/** A disk or another receiver took not all of a result; the message is the whole line to show. */
final class BrokenOff extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BrokenOff(String message, Throwable cause) {
        super(message, cause);
    }
}
