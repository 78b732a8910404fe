package evenwood.measure;

import java.util.List;

/**
 * Crackle: how many clicks were heard.
 *
 * @param count        all of them
 * @param startSeconds where the first of them lie in the take; as many as the meter keeps
 */
public record ClickReading(int count, List<Double> startSeconds) {
    public static final ClickReading NONE = new ClickReading(0, List.of());

    public ClickReading {
        startSeconds = List.copyOf(startSeconds);
    }
}
