package evenwood.takes;

import java.util.SplittableRandom;

/**
 * The noise of a pickup chain: mostly white, a quarter of its power pink, as preamps with a low-frequency corner have it.
 *
 * <p>How: Gaussian samples; pink as the sum of first-order low-passes with corners at 4, 32, 256 and 2048 Hz whose
 * passband powers fall by 8 a step (within about 1 dB of −3 dB/octave from 10 Hz to 4 kHz). Scaled so that the RMS over
 * the stretch is exactly what was asked.
 */
public final class RoomNoise {
    private static final double PINK_POWER_SHARE = 0.25;
    private static final double[] CORNERS_HZ = {4, 32, 256, 2048};

    private RoomNoise() { }

    /** Adds noise of the given RMS in dBFS to the samples. */
    public static void add(float[] samples, int sampleRateHz, double rmsDbfs, long seed) {
        float[] noise = mixed(samples.length, sampleRateHz, rmsDbfs, seed, PINK_POWER_SHARE);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += noise[i];
        }
    }

    /** @param pinkShare share of the power that is pink: 0 is white, 1 is pink */
    static float[] mixed(int frames, int sampleRateHz, double rmsDbfs, long seed, double pinkShare) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] white = new double[frames];
        double[] pink = new double[frames];
        double[] state = new double[CORNERS_HZ.length];
        for (int i = 0; i < frames; i++) {
            white[i] = random.nextGaussian();
            for (int k = 0; k < state.length; k++) {
                double step = 1 - Math.exp(-2 * Math.PI * Math.min(CORNERS_HZ[k], 0.45 * sampleRateHz) / sampleRateHz);
                state[k] += step * (random.nextGaussian() - state[k]);
                pink[i] += state[k] * Math.sqrt(Math.pow(8, CORNERS_HZ.length - k));
            }
        }
        double whiteGain = Math.sqrt(1 - pinkShare) / rms(white);
        double pinkGain = Math.sqrt(pinkShare) / rms(pink);
        for (int i = 0; i < frames; i++) {
            white[i] = whiteGain * white[i] + pinkGain * pink[i];
        }
        double gain = Math.pow(10, rmsDbfs / 20) / rms(white);
        float[] noise = new float[frames];
        for (int i = 0; i < frames; i++) {
            noise[i] = (float) (gain * white[i]);
        }
        return noise;
    }

    private static double rms(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v * v;
        }
        return Math.sqrt(sum / x.length);
    }
}
