package evenwood.measure;

/**
 * Raises the sample rate fourfold and gives, for every sample, the highest of the four new ones.
 *
 * <p>In: one channel, any number of frames up to {@link #PASS_FRAMES} at a time. Out: magnitudes, full scale 1.0.
 * <p>How: the interpolator of 4 phases × 12 taps of ITU-R BS.1770-5 Annex 2; all figures are whole multiples of 1/8192.
 * Phase 3 is phase 0 backwards and phase 2 is phase 1 backwards, so each pair splits into a part E that is the same
 * forwards and backwards and a part O that changes sign, and max(|E + O|, |E − O|) = |E| + |O|: half the multiplications.
 * The passes over whole arrays are short and read at one index only, which the compiler turns into vector instructions.
 * <p>Limits: as printed it is not exactly of unity gain: −0.6 to +0.22 dB up to 0.45 of the sample rate
 * (TruePeakFilterReferenceTest). It looks 5½ samples back.
 * <p>Thread: one owner. {@link #raise} never allocates, locks, logs, or touches files.
 */
final class TruePeakFilter {
    static final int PASS_FRAMES = 512;
    static final int TAPS = 12;
    private static final int PAIRS = TAPS / 2;
    private static final float DENOMINATOR = 8192;
    private static final int[] PHASE_0 = {14, 90, -161, 272, -487, 1125, 7964, -838, 390, -218, 122, -68};
    private static final int[] PHASE_1 = {-239, 240, -424, 730, -1364, 3810, 6388, -1641, 832, -477, 271, -155};

    private final float[] sound = new float[TAPS - 1 + PASS_FRAMES];
    private final float[] newer = new float[PASS_FRAMES];
    private final float[] older = new float[PASS_FRAMES];
    private final float[] outerEven = new float[PASS_FRAMES];
    private final float[] outerOdd = new float[PASS_FRAMES];
    private final float[] innerEven = new float[PASS_FRAMES];
    private final float[] innerOdd = new float[PASS_FRAMES];

    /** Output sample 4n + phase is the sum over taps of this times x[n − tap]. */
    static float coefficient(int phase, int tap) {
        return switch (phase) {
            case 0 -> PHASE_0[tap] / DENOMINATOR;
            case 1 -> PHASE_1[tap] / DENOMINATOR;
            case 2 -> PHASE_1[TAPS - 1 - tap] / DENOMINATOR;
            case 3 -> PHASE_0[TAPS - 1 - tap] / DENOMINATOR;
            default -> throw new IllegalArgumentException("true peak filter: phase=" + phase + ", but 0 to 3 exist");
        };
    }

    /**
     * Filters the next frames and lifts every entry of {@code highest} to what was found there, the samples themselves
     * included. [audio thread]
     */
    void raise(float[] highest, float[] samples, int from, int frames) {
        System.arraycopy(samples, from, sound, TAPS - 1, frames);
        for (int tap = 0; tap < PAIRS; tap++) {
            System.arraycopy(sound, TAPS - 1 - tap, newer, 0, frames);
            System.arraycopy(sound, tap, older, 0, frames);
            addPair(tap, frames);
        }
        lift(highest, outerEven, outerOdd, frames);
        lift(highest, innerEven, innerOdd, frames);
        System.arraycopy(sound, TAPS - 1, newer, 0, frames);
        liftSamples(highest, newer, frames);
        System.arraycopy(sound, frames, sound, 0, TAPS - 1);
    }

    void reset() {
        java.util.Arrays.fill(sound, 0, TAPS - 1, 0f);
    }

    private void addPair(int tap, int frames) {
        float a = even(0, tap);
        float b = odd(0, tap);
        float c = even(1, tap);
        float d = odd(1, tap);
        if (tap == 0) {
            setPair(newer, older, outerEven, outerOdd, innerEven, innerOdd, a, b, c, d, frames);
        } else {
            addPair(newer, older, outerEven, outerOdd, innerEven, innerOdd, a, b, c, d, frames);
        }
    }

    private static float even(int phase, int tap) {
        return (coefficient(phase, tap) + coefficient(phase, TAPS - 1 - tap)) / 2;
    }

    private static float odd(int phase, int tap) {
        return (coefficient(phase, tap) - coefficient(phase, TAPS - 1 - tap)) / 2;
    }

    private static void setPair(float[] newer, float[] older, float[] outerEven, float[] outerOdd, float[] innerEven,
                                float[] innerOdd, float a, float b, float c, float d, int frames) {
        for (int i = 0; i < frames; i++) {
            float sum = newer[i] + older[i];
            float difference = newer[i] - older[i];
            outerEven[i] = a * sum;
            outerOdd[i] = b * difference;
            innerEven[i] = c * sum;
            innerOdd[i] = d * difference;
        }
    }

    private static void addPair(float[] newer, float[] older, float[] outerEven, float[] outerOdd, float[] innerEven,
                                float[] innerOdd, float a, float b, float c, float d, int frames) {
        for (int i = 0; i < frames; i++) {
            float sum = newer[i] + older[i];
            float difference = newer[i] - older[i];
            outerEven[i] += a * sum;
            outerOdd[i] += b * difference;
            innerEven[i] += c * sum;
            innerOdd[i] += d * difference;
        }
    }

    private static void lift(float[] highest, float[] even, float[] odd, int frames) {
        for (int i = 0; i < frames; i++) {
            highest[i] = Math.max(highest[i], Math.abs(even[i]) + Math.abs(odd[i]));
        }
    }

    private static void liftSamples(float[] highest, float[] samples, int frames) {
        for (int i = 0; i < frames; i++) {
            highest[i] = Math.max(highest[i], Math.abs(samples[i]));
        }
    }
}
