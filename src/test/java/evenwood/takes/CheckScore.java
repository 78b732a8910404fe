package evenwood.takes;

import java.util.SplittableRandom;

/**
 * What a player gives who follows a guided check: rest, soft notes, hard notes, playing.
 *
 * <p>Struck notes of ten harmonics that die away, over a steady hiss at −75 dBFS, 48 kHz; the same every time.
 */
public final class CheckScore {
    public static final int RATE_HZ = 48_000;
    private static final double SOFT_PEAK = 0.03;
    private static final double USUAL_PEAK = 0.08;
    private static final double HARD_PEAK = 0.25;
    private static final int[] SCALE = {0, 2, 4, 5, 7, 9, 11, 12};
    private static final double LOWEST_HZ = 196;

    private final float[] samples;
    private int note;

    private CheckScore(double seconds) {
        samples = new float[(int) (seconds * RATE_HZ)];
        SplittableRandom random = new SplittableRandom(11);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (1.8e-4 * (random.nextDouble() * 2 - 1) * Math.sqrt(3));
        }
    }

    public static float[] rest(double seconds) {
        return new CheckScore(seconds).samples;
    }

    public static float[] soft(int notes) {
        return new CheckScore(notes * 0.5).playing(SOFT_PEAK);
    }

    public static float[] hard(int notes) {
        return new CheckScore(notes * 0.5).playing(HARD_PEAK);
    }

    public static float[] usual(int notes) {
        return new CheckScore(notes * 0.5).playing(USUAL_PEAK);
    }

    /** One after the other. */
    public static float[] joined(float[]... parts) {
        int length = 0;
        for (float[] part : parts) {
            length += part.length;
        }
        float[] all = new float[length];
        int at = 0;
        for (float[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    private float[] playing(double peak) {
        for (int start = RATE_HZ / 20; start + RATE_HZ / 2 <= samples.length + RATE_HZ / 20; start += RATE_HZ / 2) {
            strike(start, LOWEST_HZ * Math.pow(2, SCALE[note++ % SCALE.length] / 12.0), peak);
        }
        return samples;
    }

    private void strike(int start, double hz, double peak) {
        int end = Math.min(samples.length, start + RATE_HZ * 45 / 100);
        for (int i = start; i < end; i++) {
            double seconds = (double) (i - start) / RATE_HZ;
            double rise = Math.min(1, seconds / 0.003);
            double sum = 0;
            for (int k = 1; k <= 10; k++) {
                sum += Math.exp(-seconds * (3 + k)) * Math.sin(2 * Math.PI * k * hz * seconds + k) / k;
            }
            samples[i] += (float) (peak * rise * sum / 1.6);
        }
    }
}
