package evenwood.cli;

import java.util.Locale;
import java.util.Optional;

/** Letters a player types while something else goes on; each needs Enter, as a plain terminal hands out whole lines. */
final class TypedLetters implements AutoCloseable {
    /** Enter and nothing else. */
    static final char ENTER = '\n';

    private final TypedLines lines;

    TypedLetters(Terminal terminal) {
        lines = new TypedLines(terminal);
    }

    /** The oldest letter not yet taken, in lower case, or {@link #ENTER}. */
    Optional<Character> next() {
        return lines.next().map(line -> line.strip().toLowerCase(Locale.ROOT)).map(word -> word.isEmpty() ? ENTER : word.charAt(0));
    }

    @Override
    public void close() {
        lines.close();
    }
}
