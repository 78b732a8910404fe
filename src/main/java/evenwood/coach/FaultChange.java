package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.Statement;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Whether one fault is better, the same or worse than in the take before.
 *
 * @param fault        which
 * @param change       the verdict
 * @param confidence   that it is right, 0 to 1
 * @param changeDb     by how much there is more of it; negative is less
 * @param deviationDb  standard error of that
 * @param evidence     in words
 */
public record FaultChange(Fault fault, Change change, double confidence, OptionalDouble changeDb, OptionalDouble deviationDb, Statement evidence) {
    /** The verdict; the ids are part of the JSON contract. */
    public enum Change {
        BETTER("better"), SAME("same"), WORSE("worse");

        private final String id;

        Change(String id) {
            this.id = id;
        }

        public String id() {
            return id;
        }
    }

    /** Smaller changes are not worth a word; reference §12.3 has the same for moves. */
    private static final double SAME_WITHIN_DB = 1.5;
    /** Before hearing: as likely that nothing was turned as that something was, and then by some 6 dB. Our choice. */
    private static final double USUAL_CHANGE_DB = 6;
    private static final double NOTHING_TURNED = 0.5;
    private static final double DEVIATIONS_95 = 1.96;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /**
     * From a measured change.
     *
     * <p>How: Bayes' rule with two explanations, nothing changed or something did (normal, {@value #USUAL_CHANGE_DB} dB); "same"
     * is nothing, or something under {@value #SAME_WITHIN_DB} dB.
     */
    static FaultChange measured(Fault fault, double changeDb, double deviationDb, Statement evidence) {
        double variance = deviationDb * deviationDb;
        double wide = variance + USUAL_CHANGE_DB * USUAL_CHANGE_DB;
        double nothing = NOTHING_TURNED * density(changeDb, variance);
        double something = (1 - NOTHING_TURNED) * density(changeDb, wide);
        double changed = nothing + something == 0 ? 1 : something / (nothing + something);
        double mean = changeDb * USUAL_CHANGE_DB * USUAL_CHANGE_DB / wide;
        double deviation = Math.sqrt(variance * USUAL_CHANGE_DB * USUAL_CHANGE_DB / wide);
        double better = changed * NORMAL.cumulativeProbability((-SAME_WITHIN_DB - mean) / deviation);
        double worse = changed * NORMAL.cumulativeProbability((mean - SAME_WITHIN_DB) / deviation);
        double same = 1 - better - worse;
        Change change = same >= Math.max(better, worse) ? Change.SAME : better > worse ? Change.BETTER : Change.WORSE;
        return new FaultChange(fault, change, Math.max(same, Math.max(better, worse)), OptionalDouble.of(changeDb),
            OptionalDouble.of(deviationDb), evidence);
    }

    /** From how likely the fault is there in each take. */
    static FaultChange presence(Fault fault, double before, double now, Statement evidence) {
        double better = before * (1 - now);
        double worse = now * (1 - before);
        double same = 1 - better - worse;
        Change change = same >= Math.max(better, worse) ? Change.SAME : better > worse ? Change.BETTER : Change.WORSE;
        return new FaultChange(fault, change, Math.max(same, Math.max(better, worse)), OptionalDouble.empty(), OptionalDouble.empty(), evidence);
    }

    /** 95 % half-width of the change. */
    public OptionalDouble halfWidthDb() {
        return deviationDb.isPresent() ? OptionalDouble.of(DEVIATIONS_95 * deviationDb.getAsDouble()) : OptionalDouble.empty();
    }

    private static double density(double x, double variance) {
        return Math.exp(-x * x / (2 * variance)) / Math.sqrt(variance);
    }
}
