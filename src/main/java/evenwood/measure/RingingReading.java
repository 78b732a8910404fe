package evenwood.measure;

import java.util.List;

/**
 * Howls that the meter stands behind, in order of time; one that died away by itself is not among them.
 *
 * @param rings empty when nothing rang
 */
public record RingingReading(List<Ring> rings) {
    public static final RingingReading NONE = new RingingReading(List.of());

    public RingingReading {
        rings = List.copyOf(rings);
    }
}
