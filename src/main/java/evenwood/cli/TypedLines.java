package evenwood.cli;

import java.util.Optional;
import java.util.concurrent.ConcurrentLinkedQueue;

/** Lines a player types while something else goes on. */
final class TypedLines implements AutoCloseable {
    private static final long LOOK_NANOS = 50_000_000;

    private final ConcurrentLinkedQueue<String> typed = new ConcurrentLinkedQueue<>();
    private volatile boolean over;
    private volatile boolean closed;

    TypedLines(Terminal terminal) {
        Thread reader = new Thread(() -> read(terminal), "typed-lines");
        reader.setDaemon(true);
        reader.start();
    }

    /** The oldest line not yet taken. */
    Optional<String> next() {
        return Optional.ofNullable(typed.poll());
    }

    /** Waits for a line; empty when nobody types any more, or Ctrl-C asks for an end. */
    Optional<String> await(Interruption interruption) {
        while (!interruption.isAskedWithin(LOOK_NANOS)) {
            boolean last = over; // looked at before the queue, so that the last line is not missed
            String line = typed.poll();
            if (line != null || last) {
                return Optional.ofNullable(line);
            }
        }
        return Optional.empty();
    }

    private void read(Terminal terminal) {
        for (Optional<String> line = terminal.typed(); line.isPresent() && !closed; line = terminal.typed()) {
            typed.add(line.get());
        }
        over = true;
    }

    @Override
    public void close() {
        closed = true;
    }
}
