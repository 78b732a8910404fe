package evenwood.journal;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.stat.StatUtils;
import org.hipparchus.stat.inference.MannWhitneyUTest;

/**
 * By how much one lot of takes lies above another, and how sure that is.
 *
 * <p>How: Mann and Whitney's rank test; the shift is the median of all differences between the lots (Hodges and Lehmann), its
 * interval the order statistics of those differences that the test does not refuse. Source: Hollander and Wolfe,
 * Nonparametric Statistical Methods, ch. 4 (from memory); how often the interval holds the truth: TrendTest.
 *
 * @param amount  later − earlier
 * @param lowest  lower end of its confidence interval
 * @param highest upper end
 * @param chance  how often lots without a shift would differ so much, 0 to 1
 */
record Shift(double amount, double lowest, double highest, double chance) {
    private static final NormalDistribution NORMAL = new NormalDistribution();

    static Shift between(double[] earlier, double[] later, double confidence) {
        double[] differences = new double[earlier.length * later.length];
        int count = 0;
        for (double before : earlier) {
            for (double after : later) {
                differences[count++] = after - before;
            }
        }
        Arrays.sort(differences);
        double z = NORMAL.inverseCumulativeProbability((1 + confidence) / 2);
        double spread = Math.sqrt(count * (earlier.length + later.length + 1) / 12.0);
        int lower = (int) Math.max(0, Math.floor(count / 2.0 - z * spread));
        return new Shift(StatUtils.percentile(differences, 50), differences[lower], differences[count - 1 - lower],
            new MannWhitneyUTest().mannWhitneyUTest(earlier, later));
    }
}
