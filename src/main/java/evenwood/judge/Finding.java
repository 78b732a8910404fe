package evenwood.judge;

import java.util.Comparator;
import java.util.Optional;

/**
 * One thing that is wrong, with its evidence.
 *
 * @param fault       what
 * @param severity    how much it matters
 * @param probability how sure, 0 to 1, that it is there at all
 * @param evidence    what was measured, in numbers and plain words
 * @param bandHz      where on the frequency axis, if anywhere
 */
public record Finding(Fault fault, Severity severity, double probability, Statement evidence, Optional<BandHz> bandHz) {
    /** Strongest first, then surest, then in the order of the faults. */
    public static final Comparator<Finding> STRONGEST_FIRST = Comparator.comparing(Finding::severity).reversed()
        .thenComparing(Comparator.comparingDouble(Finding::probability).reversed())
        .thenComparing(Finding::fault);

    public Finding {
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("finding " + fault.id() + ": probability=" + probability + ", but 0 to 1 is allowed");
        }
    }

    public Finding(Fault fault, Severity severity, double probability, Statement evidence) {
        this(fault, severity, probability, evidence, Optional.empty());
    }

    public boolean isStrong() {
        return severity == Severity.STRONG;
    }
}
