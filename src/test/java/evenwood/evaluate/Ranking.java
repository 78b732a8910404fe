package evenwood.evaluate;

import java.util.Arrays;
import java.util.List;

/** How well a number tells two classes apart. */
public final class Ranking {
    private Ranking() { }

    /** Area under the receiver operating characteristic: the chance that a positive scores higher; ties count half. */
    public static double auc(List<Double> positives, List<Double> negatives) {
        double[] sorted = negatives.stream().mapToDouble(x -> x).sorted().toArray();
        double wins = 0;
        for (double x : positives) {
            wins += (below(sorted, x) + below(sorted, Math.nextUp(x))) / 2.0;
        }
        return wins / positives.size() / negatives.size();
    }

    /** How many are smaller than x. */
    private static int below(double[] sorted, double x) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) / 2;
            if (sorted[middle] < x) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The value below which a part of the numbers lies; NaN for none. */
    public static double quantile(double[] values, double part) {
        double[] sorted = Arrays.stream(values).sorted().toArray();
        return sorted.length == 0 ? Double.NaN : sorted[(int) Math.min(sorted.length - 1, Math.floor(part * sorted.length))];
    }
}
