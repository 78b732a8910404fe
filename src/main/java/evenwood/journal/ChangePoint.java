package evenwood.journal;

import java.util.Arrays;
import java.util.Comparator;

/**
 * Where a row of values most likely jumped to another level, if it did.
 *
 * <p>How: Pettitt's rank statistic, U(t) = 2·Σ rank − t(n+1), its greatest amount K; chance ≈ 2·exp(−6K²/(n³+n²)). Source:
 * Pettitt 1979, Applied Statistics 28, 126 (from memory); how often it speaks without a jump: TrendTest.
 *
 * @param first  index of the first value after the jump
 * @param chance how often a row without a jump would look so, 0 to 1
 */
record ChangePoint(int first, double chance) {
    static ChangePoint of(double[] values) {
        int n = values.length;
        double[] ranks = ranks(values);
        double sum = 0;
        double most = -1;
        int at = 1;
        for (int i = 0; i < n - 1; i++) {
            sum += ranks[i];
            double u = Math.abs(2 * sum - (i + 1) * (n + 1.0));
            if (u > most) {
                most = u;
                at = i + 1;
            }
        }
        return new ChangePoint(at, Math.min(1, 2 * Math.exp(-6 * most * most / ((double) n * n * n + (double) n * n))));
    }

    /** From 1; equal values share their mean rank. */
    private static double[] ranks(double[] values) {
        Integer[] order = new Integer[values.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> values[i]));
        double[] ranks = new double[values.length];
        for (int i = 0, j; i < order.length; i = j) {
            for (j = i; j < order.length && values[order[j]] == values[order[i]]; j++) { }
            for (int k = i; k < j; k++) {
                ranks[order[k]] = (i + 1 + j) / 2.0;
            }
        }
        return ranks;
    }
}
