package evenwood.cli;

import evenwood.report.Sentences;
import java.io.BufferedOutputStream;
import java.io.BufferedReader;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.CharsetEncoder;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.Optional;

/**
 * Where the words go: knows whether a person watches and which characters can be shown.
 *
 * <p>Colour, redrawing and progress bars appear only before a person's terminal; a file or a pipe gets plain lines.
 */
final class Terminal {
    private final ResultStream results;
    private final PrintStream out;
    private final PrintStream err;
    private final boolean interactive;
    private final CharsetEncoder encoder;
    private final BufferedReader in;
    private final Sentences sentences;
    private boolean troubleTold;

    Terminal(OutputStream out, PrintStream err, boolean interactive, Charset charset) {
        this(out, err, interactive, charset, System.in);
    }

    Terminal(OutputStream out, PrintStream err, boolean interactive, Charset charset, InputStream in) {
        this(out, err, interactive, charset, in, Sentences.english());
    }

    Terminal(OutputStream out, PrintStream err, boolean interactive, Charset charset, InputStream in, Sentences sentences) {
        this.sentences = sentences;
        this.in = new BufferedReader(new InputStreamReader(in, charset));
        results = new ResultStream(out);
        this.out = new PrintStream(new BufferedOutputStream(results), true, charset);
        this.err = err;
        this.interactive = interactive;
        this.encoder = charset.newEncoder();
    }

    static Terminal ofSystem() {
        // On Java 17 the console's own encoding is only told by this property; without a console it is absent.
        String encoding = System.getProperty("sun.stdout.encoding", System.getProperty("native.encoding", "UTF-8"));
        boolean person = System.console() != null && !"dumb".equals(System.getenv("TERM"));
        return new Terminal(new FileOutputStream(FileDescriptor.out), System.err, person, Charset.forName(encoding), System.in, Sentences.nearestTo(Locale.getDefault(Locale.Category.DISPLAY)));
    }

    /** For help texts, which are plain words in every terminal. */
    PrintWriter helpWriter() {
        return new PrintWriter(out, true);
    }

    /** What is said to the player, in the player's language; JSON speaks English everywhere. */
    Sentences sentences() {
        return sentences;
    }

    boolean isInteractive() {
        return interactive;
    }

    /** Nobody reads the results any more: what goes on for long may end. */
    boolean isLost() {
        return results.isLost();
    }

    /** The exit code after all is said: results that were not taken whole are a failure, whatever they say. */
    int ended(int code) {
        out.flush();
        Optional<String> trouble = results.trouble();
        if (trouble.isPresent() && !troubleTold) {
            troubleTold = true;
            note("evenwood: the result cannot be written to its end (" + trouble.get() + "); make room there, or send it elsewhere");
        }
        return trouble.isPresent() ? ExitCode.FAILED_MIDWAY : code;
    }

    /** Results, to standard output. */
    void line(String text) {
        out.println(showable(text));
    }

    /** Machine-readable text, untouched and in UTF-8 whatever the terminal's own encoding is. */
    void raw(String text) {
        byte[] bytes = (text + "\n").getBytes(StandardCharsets.UTF_8);
        out.write(bytes, 0, bytes.length);
        out.flush();
    }

    /** Troubles and progress, to standard error. */
    void note(String text) {
        err.println(showable(text));
    }

    /** The words before an answer, on standard error so that results stay clean. */
    void prompt(String words) {
        err.print(showable(words));
        err.flush();
    }

    /** Asks, on standard error so that results stay clean, and returns the answer; empty when nobody answers any more. */
    Optional<String> ask(String prompt) {
        prompt(prompt);
        return typed();
    }

    /** Waits for a line; empty when nobody types any more. */
    Optional<String> typed() {
        try {
            return Optional.ofNullable(in.readLine());
        } catch (IOException nobodyThere) {
            return Optional.empty();
        }
    }

    /** Draws over the current line of standard error; nothing when nobody watches. */
    void overwrite(String text) {
        if (interactive) {
            err.print("\r" + showable(text) + "\u001b[K");
            err.flush();
        }
    }

    /** Draws a block of lines over the one drawn before. */
    void redraw(String[] lines, boolean first) {
        StringBuilder text = new StringBuilder();
        if (!first) {
            text.append("\u001b[").append(lines.length).append('A');
        }
        for (String line : lines) {
            text.append(showable(line)).append("\u001b[K\n");
        }
        out.print(text);
        out.flush();
    }

    /** Takes back the line on which a person typed Enter, so that the block above it can be drawn over. */
    void eraseTypedLine() {
        if (interactive) {
            out.print("\u001b[A\u001b[K");
            out.flush();
        }
    }

    /** Strong, when a person watches a terminal that knows the common control codes. */
    String strong(String text) {
        return interactive && System.getenv("NO_COLOR") == null ? "\u001b[1m" + text + "\u001b[0m" : text;
    }

    /** The nearest plain characters where the terminal has not got ours. Any thread may say something; the encoder serves one at a time. */
    synchronized String showable(String text) {
        if (encoder.canEncode(text)) {
            return text;
        }
        String plain = text.replace('−', '-').replace('–', '-').replace("…", "...").replace("½", ".5").replace("→", "->")
            .replace('█', '#').replace('▏', '|').replace('░', '.').replace('·', '-').replace("≥", ">=").replace("±", "+-")
            .replace('’', '\'').replace('“', '"').replace('”', '"');
        StringBuilder shown = new StringBuilder();
        for (int i = 0; i < plain.length(); i++) {
            char c = plain.charAt(i);
            shown.append(encoder.canEncode(c) ? c : '?');
        }
        return shown.toString();
    }
}
