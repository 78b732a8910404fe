package evenwood.measure;

/**
 * The energy of each octave in short steps, cheaply.
 *
 * <p>In: the samples of one step. Out: mean square of each octave, highest first.
 * <p>How: a tree of half-band filters, (−1 0 9 16 9 0 −1)/32, each halving the rate; what a filter takes away is its
 * octave, looked at in every other sample only. Source: the filter is the four-point midpoint interpolation (Deslauriers
 * and Dubuc 1989); the tree is common practice for wavelets.
 * <p>Limits: octaves overlap (the filter is 6 dB down at the edge); a level meter it is not, it only shows what rises.
 * <p>Thread: one owner; nothing but the constructor allocates.
 */
final class OctaveEnergies {
    private static final double LOWEST_OCTAVE_TOP_HZ = 190;
    private static final int TAPS_BEFORE = 6;

    private final int levels;
    /** What each level hears: the last six samples of the step before, then the samples of this one. */
    private final float[][] heard;

    OctaveEnergies(HopGrid grid, int stepFrames) {
        levels = (int) Math.round(Math.log(grid.sampleRateHz() / 2.0 / LOWEST_OCTAVE_TOP_HZ) / Math.log(2));
        heard = new float[levels + 1][];
        for (int level = 0; level <= levels; level++) {
            heard[level] = new float[TAPS_BEFORE + (stepFrames >> level)];
        }
    }

    /** Octaves, the last one being everything that is lower. */
    int count() {
        return levels + 1;
    }

    void accept(float[] step, double[] meanSquares) {
        System.arraycopy(heard[0], step.length, heard[0], 0, TAPS_BEFORE);
        System.arraycopy(step, 0, heard[0], TAPS_BEFORE, step.length);
        for (int level = 0; level < levels; level++) {
            meanSquares[level] = split(heard[level], heard[level + 1]);
        }
        float[] rest = heard[levels];
        double sum = 0;
        for (int i = TAPS_BEFORE; i < rest.length; i++) {
            sum += rest[i] * rest[i];
        }
        meanSquares[levels] = sum / (rest.length - TAPS_BEFORE);
    }

    void reset() {
        for (float[] level : heard) {
            java.util.Arrays.fill(level, 0);
        }
    }

    /** Puts the lower half of the band behind the kept samples of the next level; the mean square of the upper half. */
    private static double split(float[] x, float[] lower) {
        int kept = lower.length - TAPS_BEFORE;
        System.arraycopy(lower, kept, lower, 0, TAPS_BEFORE);
        float even = 0;
        float odd = 0;
        for (int n = 0; n < kept; n += 2) {
            int i = 2 * n;
            float low = (16 * x[i + 3] + 9 * (x[i + 2] + x[i + 4]) - (x[i] + x[i + 6])) * (1 / 32f);
            float high = x[i + 3] - low;
            lower[TAPS_BEFORE + n] = low;
            even += high * high;
            float low2 = (16 * x[i + 5] + 9 * (x[i + 4] + x[i + 6]) - (x[i + 2] + x[i + 8])) * (1 / 32f);
            float high2 = x[i + 5] - low2;
            lower[TAPS_BEFORE + n + 1] = low2;
            odd += high2 * high2;
        }
        return (even + odd) / kept;
    }
}
