package evenwood.wiring;

import java.util.Comparator;
import java.util.List;

/**
 * One thing to say about a joint.
 *
 * @param fault   what
 * @param fit     how bad
 * @param joint   the joint's number
 * @param figures numbers and names for the sentence, in its order; never NaN or infinite
 */
public record WiringVerdict(WiringFault fault, Fit fit, int joint, List<Object> figures) {
    /** Worst first, then from the pickup on. */
    public static final Comparator<WiringVerdict> WORST_FIRST = Comparator.comparing(WiringVerdict::fit).reversed()
        .thenComparing(WiringVerdict::joint).thenComparing(WiringVerdict::fault);

    public WiringVerdict {
        figures = List.copyOf(figures);
    }

    static WiringVerdict of(WiringFault fault, Fit fit, Joint joint, Object... figures) {
        return new WiringVerdict(fault, fit, joint.number(), List.of(figures));
    }
}
