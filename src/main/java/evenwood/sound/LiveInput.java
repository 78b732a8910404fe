package evenwood.sound;

import java.util.List;

/**
 * An input this machine offers, as told by the system.
 *
 * @param name          what the player calls it by; no two inputs of one list have the same
 * @param description   the system's longer words for it
 * @param channels      the most channels it offers; 0 when it does not say
 * @param sampleRatesHz rates it names, ascending; empty when it does not name any and takes what it is asked for
 */
public record LiveInput(String name, String description, int channels, List<Integer> sampleRatesHz) {
    public LiveInput {
        sampleRatesHz = List.copyOf(sampleRatesHz);
    }
}
