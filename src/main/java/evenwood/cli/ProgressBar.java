package evenwood.cli;

import java.util.OptionalDouble;

/** Shows how much of a long file is done, to a person only, and wipes itself away at the end. */
final class ProgressBar implements AutoCloseable {
    private static final int WIDTH = 30;
    private static final long QUIET_NANOS = 700_000_000;
    private static final long BETWEEN_NANOS = 100_000_000;

    private final Terminal terminal;
    private final long startNanos = System.nanoTime();
    private long shownNanos;
    private boolean drawn;

    ProgressBar(Terminal terminal) {
        this.terminal = terminal;
    }

    void show(OptionalDouble part) {
        long now = System.nanoTime();
        if (now - startNanos < QUIET_NANOS || now - shownNanos < BETWEEN_NANOS) {
            return;
        }
        shownNanos = now;
        drawn = true;
        if (part.isPresent()) {
            int full = (int) Math.round(part.getAsDouble() * WIDTH);
            terminal.overwrite("listening " + "█".repeat(full) + "░".repeat(WIDTH - full) + " " + Math.round(part.getAsDouble() * 100) + " %");
        } else {
            terminal.overwrite("listening …");
        }
    }

    @Override
    public void close() {
        if (drawn) {
            terminal.overwrite("");
        }
    }
}
