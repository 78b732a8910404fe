package evenwood.measure;

import java.util.Arrays;
import java.util.SplittableRandom;

/** Sounds for tests that are known in closed form. */
final class Signals {
    private Signals() { }

    static float[] sine(int sampleRateHz, double seconds, double frequencyHz, double amplitude) {
        float[] sound = new float[(int) Math.round(seconds * sampleRateHz)];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (amplitude * Math.sin(2 * Math.PI * frequencyHz * i / sampleRateHz));
        }
        return sound;
    }

    /** Gaussian white noise of the given RMS. */
    static float[] noise(long seed, int sampleRateHz, double seconds, double rms) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] sound = new float[(int) Math.round(seconds * sampleRateHz)];
        for (int i = 0; i < sound.length; i++) {
            sound[i] = (float) (rms * random.nextGaussian());
        }
        return sound;
    }

    static float[] add(float[] a, float[] b) {
        float[] sum = a.clone();
        for (int i = 0; i < Math.min(a.length, b.length); i++) {
            sum[i] += b[i];
        }
        return sum;
    }

    /** An activity that calls every hop of a take the same. */
    static ActivityReading all(HopGrid grid, long hops, byte state) {
        byte[] states = new byte[(int) hops];
        Arrays.fill(states, state);
        return new ActivityReading(grid, 0, states, Double.NEGATIVE_INFINITY);
    }
}
