package evenwood.evaluate;

import java.util.Arrays;

/**
 * How hard the hardest tenth of a take's attacks is, and how much of it a stage takes away.
 *
 * <p>The project's rule: distortion is called audible when the hardest tenth of the attacks come out 1 dB short or more.
 * A sine 1 dB over a hard limit has 4.6 % THD, one compressed by 1 dB in a tanh stage 3.6 % (project reference 5.2, 5.3);
 * that 1 dB is also what the onset is defined by.
 */
final class HardestPlaying {
    static final double AUDIBLE_DB = 1;
    private static final int STRETCH_FRAMES = 1024;
    private static final double RISE = 1.41;
    private static final double QUIETEST = 0.03;
    private static final double HARDEST_SHARE = 0.9;

    private HardestPlaying() { }

    /** Peak that the hardest tenth of the attacks reach. @param upperOnly whether only upper peaks count */
    static double peak(float[] x, boolean upperOnly) {
        double[] peaks = peaks(x, upperOnly);
        double highest = Arrays.stream(peaks).max().orElse(0);
        double[] attacks = java.util.stream.IntStream.range(2, peaks.length - 2)
            .filter(i -> peaks[i] > RISE * Math.max(peaks[i - 1], peaks[i - 2]) && peaks[i] > QUIETEST * highest)
            .mapToDouble(i -> Math.max(peaks[i], Math.max(peaks[i + 1], peaks[i + 2]))).sorted().toArray();
        return attacks.length < 5 ? 0.8 * highest : attacks[(int) (HARDEST_SHARE * attacks.length)];
    }

    /** How many dB a stage's output is short where the input reaches its hardest tenth: the larger of both sides. */
    static double shortDb(float[] in, float[] out) {
        double shortDb = 0;
        for (int sign = -1; sign <= 1; sign += 2) {
            double[] before = peaks(signed(in, sign), true);
            double[] after = peaks(signed(out, sign), true);
            double threshold = peak(signed(in, sign), true);
            double sum = 0;
            int count = 0;
            for (int i = 0; i < before.length; i++) {
                if (before[i] >= threshold) {
                    sum += 20 * Math.log10(before[i] / Math.max(1e-9, after[i]));
                    count++;
                }
            }
            shortDb = Math.max(shortDb, count == 0 ? 0 : sum / count);
        }
        return shortDb;
    }

    private static float[] signed(float[] x, int sign) {
        float[] out = x.clone();
        PickupChain.scale(out, sign);
        return out;
    }

    private static double[] peaks(float[] x, boolean upperOnly) {
        double[] peaks = new double[x.length / STRETCH_FRAMES];
        for (int i = 0; i < peaks.length * STRETCH_FRAMES; i++) {
            double v = upperOnly ? x[i] : Math.abs(x[i]);
            peaks[i / STRETCH_FRAMES] = Math.max(peaks[i / STRETCH_FRAMES], v);
        }
        return peaks;
    }
}
