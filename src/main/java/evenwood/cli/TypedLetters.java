package evenwood.cli;

import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Letters a player types while something else goes on; each needs Enter, as a plain terminal hands out whole lines. */
final class TypedLetters implements AutoCloseable {
    /** Enter and nothing else. */
    static final char ENTER = '\n';

    private final ConcurrentLinkedQueue<Character> typed = new ConcurrentLinkedQueue<>();
    private volatile boolean closed;

    TypedLetters(Terminal terminal) {
        Thread reader = new Thread(() -> read(terminal), "typed-letters");
        reader.setDaemon(true);
        reader.start();
    }

    /** The oldest letter not yet taken, in lower case, or {@link #ENTER}. */
    Optional<Character> next() {
        return Optional.ofNullable(typed.poll());
    }

    private void read(Terminal terminal) {
        Optional<String> line = terminal.ask("");
        while (line.isPresent() && !closed) {
            String word = line.get().strip().toLowerCase(Locale.ROOT);
            typed.add(word.isEmpty() ? ENTER : word.charAt(0));
            line = terminal.ask("");
        }
    }

    @Override
    public void close() {
        closed = true;
    }
}
