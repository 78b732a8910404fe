package evenwood.judge;

import java.util.List;

/**
 * A sentence to be said, without its language: the key of the sentence in the word files and the figures it carries.
 *
 * @param key     such as {@code hum.evidence}; every key has a sentence in every language (SentencesTest)
 * @param figures numbers and short words, in the order the sentence names them; never NaN or infinite
 */
public record Statement(String key, List<Object> figures) {
    public Statement {
        figures = List.copyOf(figures);
        for (Object figure : figures) {
            if (figure instanceof Double number && !Double.isFinite(number)) {
                throw new IllegalArgumentException("statement " + key + ": figure=" + number
                    + ", but only finite numbers can be said; choose another sentence for silence");
            }
        }
    }

    public static Statement of(String key, Object... figures) {
        return new Statement(key, List.of(figures));
    }
}
