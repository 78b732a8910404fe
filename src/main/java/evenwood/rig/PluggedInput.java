package evenwood.rig;

import java.util.OptionalDouble;

/**
 * An input as it stands.
 *
 * @param input   what it is
 * @param gainDb  where its gain stands; empty when nobody said
 * @param phantom whether its phantom power is on
 */
public record PluggedInput(Input input, OptionalDouble gainDb, boolean phantom) {
}
