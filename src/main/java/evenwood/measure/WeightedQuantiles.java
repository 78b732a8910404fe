package evenwood.measure;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;
import org.hipparchus.special.Beta;

/**
 * Which value a share of weighted values stays under, without a step when one value more or less is counted.
 *
 * <p>How: the mean of all values, each weighted with how probable it is that it is the one wanted: the beta distribution
 * of the order statistic. Source: Harrell and Davis 1982 (Biometrika 69, 635); with weights Akinshin 2023 (arXiv:2304.07265).
 */
final class WeightedQuantiles {
    /** What lies so many standard deviations off adds nothing in double precision. */
    private static final double FARTHEST_DEVIATIONS = 9;

    private final double[] values;
    /** The share of the weight that lies at or under each value. */
    private final double[] under;
    private final double counted;

    private WeightedQuantiles(double[] values, double[] under, double counted) {
        this.values = values;
        this.under = under;
        this.counted = counted;
    }

    /** @param counted how many independent values these are worth */
    static WeightedQuantiles of(double[] values, double[] weights, double counted) {
        int[] order = IntStream.range(0, values.length).filter(i -> weights[i] > 0).boxed().sorted(Comparator.comparingDouble(i -> values[i])).mapToInt(i -> i).toArray();
        double whole = Arrays.stream(weights).sum();
        double[] under = new double[order.length];
        double sum = 0;
        for (int i = 0; i < order.length; i++) {
            sum += weights[order[i]];
            under[i] = Math.min(1, sum / whole);
        }
        return new WeightedQuantiles(Arrays.stream(order).mapToDouble(i -> values[i]).toArray(), under, whole > 0 ? counted : 0);
    }

    boolean areKnown() {
        return counted > 0;
    }

    double at(double share) {
        double a = (counted + 1) * share;
        double b = (counted + 1) * (1 - share);
        double reach = FARTHEST_DEVIATIONS * Math.sqrt(share * (1 - share) / (counted + 2));
        double before = 0;
        double sum = 0;
        for (int i = 0; i < values.length && before < 1; i++) {
            double now = under[i] < share - reach ? 0 : i == values.length - 1 || under[i] > share + reach ? 1 : Beta.regularizedBeta(under[i], a, b);
            sum += now > before ? (now - before) * values[i] : 0;
            before = now;
        }
        return sum;
    }
}
