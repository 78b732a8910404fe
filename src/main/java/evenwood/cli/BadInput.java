package evenwood.cli;

/** A wrong word or value of the player's; the message is the whole line to show. */
final class BadInput extends RuntimeException {
    private static final long serialVersionUID = 1L;

    BadInput(String message) {
        super(message);
    }
}
