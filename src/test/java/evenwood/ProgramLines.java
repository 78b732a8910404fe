package evenwood;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;

/** What a child program prints, line by line as it comes, with the time each line was seen. */
public final class ProgramLines {
    /** @param nanos when it was seen, on the test's clock */
    public record Line(String text, long nanos) { }

    private final LinkedBlockingQueue<Line> coming = new LinkedBlockingQueue<>();
    private final List<Line> all = new ArrayList<>();
    private final Process process;

    public ProgramLines(Process process) {
        this.process = process;
        Thread reader = new Thread(() -> read(process.inputReader()), "program-lines");
        reader.setDaemon(true);
        reader.start();
    }

    /** The next line that fits; earlier ones are passed over. Fails after the given time with all that was said. */
    public Line await(String what, int seconds, Predicate<String> fits) {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
        try {
            while (true) {
                Line line = coming.poll(Math.max(0, end - System.nanoTime()), TimeUnit.NANOSECONDS);
                if (line == null) {
                    throw new AssertionError("waited " + seconds + " s in vain for " + what + "; the program "
                        + (process.isAlive() ? "runs" : "ended with " + process.exitValue()) + " and said " + all);
                }
                all.add(line);
                if (fits.test(line.text())) {
                    return line;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    /** What was waited for or passed over so far. */
    public List<String> texts() {
        return all.stream().map(Line::text).toList();
    }

    private void read(BufferedReader lines) {
        try {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                coming.add(new Line(line, System.nanoTime()));
            }
        } catch (IOException e) {
            if (process.isAlive()) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
