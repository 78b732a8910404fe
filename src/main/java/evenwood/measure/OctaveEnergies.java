package evenwood.measure;

/**
 * The energy of each octave in short steps, cheaply.
 *
 * <p>In: samples one by one. Out: mean square of each octave, highest first, over the step that {@link #endStep} ends.
 * <p>How: a tree of half-band filters, (−1 0 9 16 9 0 −1)/32, each halving the rate; what a filter takes away is its
 * octave, looked at in every other sample only. Source: the filter is the four-point midpoint interpolation (Deslauriers
 * and Dubuc 1989); the tree is common practice for wavelets.
 * <p>Limits: octaves overlap (the filter is 6 dB down at the edge); a level meter it is not, it only shows what rises.
 * <p>Thread: one owner; nothing but the constructor allocates.
 */
final class OctaveEnergies {
    private static final double LOWEST_OCTAVE_TOP_HZ = 190;
    private static final int TAPS = 7;

    private final int levels;
    private final float[] delays;
    private final int[] pending;
    private final double[] sums;
    private final int[] counts;

    OctaveEnergies(int sampleRateHz) {
        levels = Math.max(2, (int) Math.round(Math.log(sampleRateHz / 2.0 / LOWEST_OCTAVE_TOP_HZ) / Math.log(2)));
        delays = new float[levels * TAPS];
        pending = new int[levels];
        sums = new double[levels + 1];
        counts = new int[levels + 1];
    }

    /** Octaves, the last one being everything that is lower. */
    int count() {
        return levels + 1;
    }

    void accept(float sample) {
        float x = sample;
        for (int level = 0; level < levels; level++) {
            int at = level * TAPS;
            float[] d = delays;
            d[at] = d[at + 1];
            d[at + 1] = d[at + 2];
            d[at + 2] = d[at + 3];
            d[at + 3] = d[at + 4];
            d[at + 4] = d[at + 5];
            d[at + 5] = d[at + 6];
            d[at + 6] = x;
            pending[level] ^= 1;
            if (pending[level] != 0) {
                return;
            }
            float low = (16 * d[at + 3] + 9 * (d[at + 2] + d[at + 4]) - (d[at] + d[at + 6])) / 32;
            float high = d[at + 3] - low;
            sums[level] += high * high;
            counts[level]++;
            x = low;
        }
        sums[levels] += x * x;
        counts[levels]++;
    }

    /** Gives the mean square of each octave since the last call and starts over. */
    void endStep(double[] meanSquares) {
        for (int i = 0; i <= levels; i++) {
            meanSquares[i] = counts[i] == 0 ? 0 : sums[i] / counts[i];
            sums[i] = 0;
            counts[i] = 0;
        }
    }

    void reset() {
        java.util.Arrays.fill(delays, 0);
        java.util.Arrays.fill(pending, 0);
        java.util.Arrays.fill(sums, 0);
        java.util.Arrays.fill(counts, 0);
    }
}
