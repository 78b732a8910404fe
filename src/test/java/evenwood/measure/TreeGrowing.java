package evenwood.measure;

import java.util.Arrays;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;

/**
 * Grows the trees of a {@link DistortionForest}, written as its file wants them.
 *
 * <p>How: extremely randomised trees (Geurts, Ernst and Wehenkel 2006): at each node some features are drawn, for each a
 * threshold anywhere between its least and its most, and the pair that separates best by Gini's index is kept.
 */
final class TreeGrowing {
    private static final int DRAWN = 6;

    private final double[][] x;
    private final double[] y;
    private final double[] weight;
    private final int fewestInALeaf;
    private final SplittableRandom random;
    private final StringBuilder out = new StringBuilder();

    private TreeGrowing(double[][] x, double[] y, int fewestInALeaf, SplittableRandom random) {
        this.x = x;
        this.y = y;
        this.fewestInALeaf = fewestInALeaf;
        this.random = random;
        double distorted = Arrays.stream(y).sum();
        weight = Arrays.stream(y).map(one -> 1 / (one == 1 ? distorted : y.length - distorted)).toArray();
    }

    /** @param y 1 for distorted; both classes weigh the same */
    static String tree(double[][] x, double[] y, int fewestInALeaf, SplittableRandom random) {
        TreeGrowing growing = new TreeGrowing(x, y, fewestInALeaf, random);
        growing.node(IntStream.range(0, y.length).toArray());
        return growing.out.toString().trim();
    }

    private void node(int[] some) {
        double distorted = Arrays.stream(some).mapToDouble(i -> y[i] * weight[i]).sum();
        double all = Arrays.stream(some).mapToDouble(i -> weight[i]).sum();
        int bestFeature = -1;
        double bestThreshold = 0;
        double best = 1e-12;
        for (int draw = 0; draw < DRAWN && distorted > 1e-12 && all - distorted > 1e-12; draw++) {
            int feature = random.nextInt(x[0].length);
            double low = Arrays.stream(some).mapToDouble(i -> x[i][feature]).min().orElseThrow();
            double high = Arrays.stream(some).mapToDouble(i -> x[i][feature]).max().orElseThrow();
            double threshold = Float.parseFloat(number(low + random.nextDouble() * (high - low)));
            double gain = gain(some, feature, threshold, distorted, all);
            if (gain > best) {
                best = gain;
                bestFeature = feature;
                bestThreshold = threshold;
            }
        }
        if (bestFeature < 0) {
            out.append('=').append(number(distorted / all)).append(' ');
            return;
        }
        int feature = bestFeature;
        double threshold = bestThreshold;
        out.append(feature).append('<').append(number(threshold)).append(' ');
        node(Arrays.stream(some).filter(i -> x[i][feature] < threshold).toArray());
        node(Arrays.stream(some).filter(i -> !(x[i][feature] < threshold)).toArray());
    }

    /** How much less mixed the two parts are than the whole; 0 when one is too small. */
    private double gain(int[] some, int feature, double threshold, double distorted, double all) {
        double less = 0;
        double lessDistorted = 0;
        int count = 0;
        for (int i : some) {
            if (x[i][feature] < threshold) {
                less += weight[i];
                lessDistorted += weight[i] * y[i];
                count++;
            }
        }
        boolean tooSmall = count < fewestInALeaf || some.length - count < fewestInALeaf;
        return tooSmall ? 0 : mixed(distorted, all) - mixed(lessDistorted, less) - mixed(distorted - lessDistorted, all - less);
    }

    private static double mixed(double distorted, double all) {
        return distorted * (all - distorted) / all;
    }

    private static String number(double value) {
        return Double.toString(Double.parseDouble(String.format(Locale.ROOT, "%.3g", value))).replaceAll("\\.0$", "");
    }
}
