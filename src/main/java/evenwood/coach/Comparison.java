package evenwood.coach;

import java.util.List;

/**
 * Was it better? One take beside the take before.
 *
 * @param before the other take's name
 * @param faults every fault that either take has, and every tone that plainly changed
 */
public record Comparison(String before, List<FaultChange> faults) {
    public Comparison {
        faults = List.copyOf(faults);
    }
}
