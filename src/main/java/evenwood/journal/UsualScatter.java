package evenwood.journal;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.StatUtils;

/**
 * How much a reading differs from take to take when nothing has changed: what two takes must differ by to mean anything.
 *
 * <p>How: the median amount of the differences between neighbours in time, as a deviation of one take: differences of
 * neighbours hold no slow drift, a median no odd take. A normal value's amount has its median at 0.6745 deviations
 * (definition), a difference of two √2 times the deviation of one. What must be passed: Student's quantile for that many takes.
 * <p>Limits: at least {@value #FEWEST_TAKES} takes of the same instrument.
 */
final class UsualScatter {
    static final int FEWEST_TAKES = 8;
    private static final double MEDIAN_PER_DEVIATION = 0.6745;

    private UsualScatter() { }

    /** The half-width around 0 that the difference of two takes stays in, with the stated confidence; empty with too few takes. */
    static OptionalDouble ofDifference(List<ReadingPoint> points, double confidence) {
        if (points.size() < FEWEST_TAKES) {
            return OptionalDouble.empty();
        }
        double[] amounts = new double[points.size() - 1];
        for (int i = 0; i < amounts.length; i++) {
            amounts[i] = Math.abs(points.get(i + 1).value() - points.get(i).value());
        }
        double deviationOfDifference = StatUtils.percentile(amounts, 50) / MEDIAN_PER_DEVIATION;
        return OptionalDouble.of(new TDistribution(points.size() - 1.0).inverseCumulativeProbability((1 + confidence) / 2) * deviationOfDifference);
    }
}
