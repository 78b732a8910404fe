package evenwood.journal;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.StatUtils;

/**
 * A straight line through scattered points that a few odd takes do not bend, and how sure its slope is.
 *
 * <p>How: the slope is the median of the slopes between all pairs, its interval the order statistics that Kendall's test does
 * not refuse. Source: Sen 1968, J. Am. Stat. Assoc. 63, 1379 (from memory); checked against scipy's {@code theilslopes}
 * (TheilSenReferenceTest). More than {@value #MOST_POINTS} points are first averaged in groups of neighbours.
 * <p>Limits: takes are taken as independent of each other.
 *
 * @param perDay  slope
 * @param lowest  lower end of its confidence interval
 * @param highest upper end
 * @param start   value of the line at the first point
 */
record TheilSen(double perDay, double lowest, double highest, double start) {
    private static final int MOST_POINTS = 300;
    private static final NormalDistribution NORMAL = new NormalDistribution();

    /** @param days rising or equal, at least two of them different */
    static TheilSen of(double[] days, double[] values, double confidence) {
        if (days.length > MOST_POINTS) {
            return of(grouped(days), grouped(values), confidence);
        }
        double[] slopes = slopes(days, values);
        double sigma = Math.sqrt(variance(days, values));
        double z = NORMAL.inverseCumulativeProbability((1 - confidence) / 2);
        int upper = (int) Math.min(Math.rint((slopes.length - z * sigma) / 2), slopes.length - 1);
        int lower = (int) Math.max(Math.rint((slopes.length + z * sigma) / 2) - 1, 0);
        double slope = StatUtils.percentile(slopes, 50);
        double[] starts = IntStream.range(0, days.length).mapToDouble(i -> values[i] - slope * (days[i] - days[0])).toArray();
        return new TheilSen(slope, slopes[lower], slopes[upper], StatUtils.percentile(starts, 50));
    }

    private static double[] slopes(double[] days, double[] values) {
        double[] slopes = new double[days.length * (days.length - 1) / 2];
        int count = 0;
        for (int i = 0; i < days.length; i++) {
            for (int j = i + 1; j < days.length; j++) {
                if (days[j] > days[i]) {
                    slopes[count++] = (values[j] - values[i]) / (days[j] - days[i]);
                }
            }
        }
        double[] found = Arrays.copyOf(slopes, count);
        Arrays.sort(found);
        return found;
    }

    /** Of Kendall's sum, with equal days or values taken off. */
    private static double variance(double[] days, double[] values) {
        double n = days.length;
        return (n * (n - 1) * (2 * n + 5) - repeats(days) - repeats(values)) / 18;
    }

    private static double repeats(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double sum = 0;
        for (int i = 0, j; i < sorted.length; i = j) {
            for (j = i; j < sorted.length && sorted[j] == sorted[i]; j++) { }
            double k = j - i;
            sum += k * (k - 1) * (2 * k + 5);
        }
        return sum;
    }

    private static double[] grouped(double[] values) {
        double[] means = new double[MOST_POINTS];
        for (int i = 0; i < MOST_POINTS; i++) {
            int from = (int) ((long) i * values.length / MOST_POINTS);
            int to = (int) ((long) (i + 1) * values.length / MOST_POINTS);
            means[i] = Arrays.stream(values, from, to).average().orElseThrow();
        }
        return means;
    }
}
