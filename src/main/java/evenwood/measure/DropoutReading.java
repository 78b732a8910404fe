package evenwood.measure;

import java.util.List;

/**
 * Where the sound broke off and came back.
 *
 * @param count        all of them
 * @param startSeconds where the first of them lie in the take; as many as the meter keeps
 */
public record DropoutReading(int count, List<Double> startSeconds) {
    public static final DropoutReading NONE = new DropoutReading(0, List.of());

    public DropoutReading {
        startSeconds = List.copyOf(startSeconds);
    }
}
