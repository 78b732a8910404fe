package evenwood.cli;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Locale;
import java.util.Optional;

/** Standard output that remembers why it took no more: Java's own print streams keep silent about a full disk. */
final class ResultStream extends FilterOutputStream {
    private volatile String trouble;

    ResultStream(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int oneByte) throws IOException {
        write(new byte[] {(byte) oneByte}, 0, 1);
    }

    @Override
    public void write(byte[] bytes, int from, int count) throws IOException {
        try {
            out.write(bytes, from, count);
        } catch (IOException problem) {
            trouble = String.valueOf(problem.getMessage());
            throw problem;
        }
    }

    boolean isLost() {
        return trouble != null;
    }

    /** What the player should know; empty when all was taken, or when the reader closed its pipe because it has enough. */
    Optional<String> trouble() {
        return Optional.ofNullable(trouble).filter(words -> !words.toLowerCase(Locale.ROOT).contains("pipe"));
    }
}
