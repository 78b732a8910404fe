package evenwood.evaluate;

import java.io.PrintStream;

/**
 * Holds a meter or a judge against many takes whose truth is known, and prints how it did as a Markdown table.
 *
 * <p>Made with a constructor without arguments. Throws {@link AssertionError} when a target is missed.
 */
public interface Evaluation {
    void run(PrintStream out);
}
