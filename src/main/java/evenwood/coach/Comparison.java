package evenwood.coach;

import java.util.List;

/**
 * Was it better? One take beside the take before.
 *
 * @param before the other take's name
 * @param faults  every fault that either take has, and every tone that plainly changed
 * @param answers how the rig's controls answered, where it is known what was turned
 */
public record Comparison(String before, List<FaultChange> faults, List<RigAnswer> answers) {
    public Comparison {
        faults = List.copyOf(faults);
        answers = List.copyOf(answers);
    }

    Comparison with(List<RigAnswer> newAnswers) {
        return new Comparison(before, faults, newAnswers);
    }
}
