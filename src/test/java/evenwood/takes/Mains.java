package evenwood.takes;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Interference from the mains, as harmonics of a slowly drifting fundamental.
 *
 * <p>How: the strength of each harmonic is the Fourier series of the source's ideal wave (the project's reference §8.2),
 * computed here by summing over one cycle; phases are seeded. The fundamental drifts as a sine of 20 s period. Harmonics
 * go to {@value #HIGHEST}, which is 2 kHz at 50 Hz.
 */
public final class Mains {
    static final int HIGHEST = 40;
    private static final int LAST_HUM_HARMONIC = 5;
    private static final int STEPS = 7200;
    private static final double DRIFT_PERIOD_SECONDS = 20;

    /** What sends it. */
    public enum Origin {
        /** A transformer's stray field: nearly a pure sine; the weak harmonics are common practice. */
        MAGNETIC,
        /** Ripple of a full-wave rectified supply: even harmonics. */
        RECTIFIER,
        /** A lamp dimmer conducting from 90° to 180° of each half cycle: odd harmonics. */
        DIMMER,
        /** Charging pulses of 30° each half cycle into a loop. */
        CHARGING,
        /** A ground loop with a mixture: magnetic, ripple and pulses. */
        GROUND_LOOP,
        /** Only harmonics 6 to 40, equally strong: a rasp with no hum. */
        RASP
    }

    /**
     * @param mainsHz   mean frequency of the fundamental over the take
     * @param humDbfs   RMS sum of harmonics 1 to 5; −Infinity when there are none
     * @param buzzDbfs  RMS sum of harmonics 6 to 40, those under half the sample rate
     * @param amplitude of harmonic k at index k − 1
     */
    public record Truth(double mainsHz, double humDbfs, double buzzDbfs, double[] amplitude) { }

    private Mains() { }

    /** @param levelDbfs RMS sum of all harmonics   @param driftHz how far the fundamental swings to either side */
    static Injected<Truth> add(float[] clean, int sampleRateHz, Origin origin, double mainsHz, double driftHz, double levelDbfs, long seed) {
        double[] amplitude = series(origin);
        double power = 0;
        for (int k = 1; k <= HIGHEST; k++) {
            amplitude[k - 1] *= k * (mainsHz + driftHz) < 0.49 * sampleRateHz ? 1 : 0;
            power += amplitude[k - 1] * amplitude[k - 1] / 2;
        }
        double gain = Math.pow(10, levelDbfs / 20) / Math.sqrt(power);
        SplittableRandom random = new SplittableRandom(seed);
        double[] phase = new double[HIGHEST];
        for (int k = 0; k < HIGHEST; k++) {
            amplitude[k] *= gain;
            phase[k] = 2 * Math.PI * random.nextDouble();
        }
        double driftPhase = 2 * Math.PI * random.nextDouble();
        float[] out = clean.clone();
        double cycle = 0;
        double sumHz = 0;
        for (int i = 0; i < out.length; i++) {
            double hz = mainsHz + driftHz * Math.sin(driftPhase + 2 * Math.PI * i / (DRIFT_PERIOD_SECONDS * sampleRateHz));
            cycle += hz / sampleRateHz;
            sumHz += hz;
            out[i] += (float) wave(amplitude, phase, cycle);
        }
        return new Injected<>(out, new Truth(sumHz / out.length, rms(amplitude, 1, LAST_HUM_HARMONIC), rms(amplitude, LAST_HUM_HARMONIC + 1, HIGHEST), amplitude));
    }

    private static double wave(double[] amplitude, double[] phase, double cycle) {
        double sum = 0;
        for (int k = 0; k < HIGHEST; k++) {
            if (amplitude[k] != 0) {
                sum += amplitude[k] * Math.sin(2 * Math.PI * (k + 1) * (cycle - Math.floor(cycle)) + phase[k]);
            }
        }
        return sum;
    }

    private static double rms(double[] amplitude, int first, int last) {
        double power = 0;
        for (int k = first; k <= last; k++) {
            power += amplitude[k - 1] * amplitude[k - 1] / 2;
        }
        return 10 * Math.log10(power);
    }

    /** Amplitudes of harmonics 1 to 40, of any common size. */
    static double[] series(Origin origin) {
        double[] amplitude = new double[HIGHEST];
        switch (origin) {
            case MAGNETIC -> {
                amplitude[0] = 1;
                amplitude[1] = 0.02;
                amplitude[2] = 0.10;
                amplitude[4] = 0.03;
            }
            case GROUND_LOOP -> {
                double[] ripple = series(Origin.RECTIFIER);
                double[] pulses = series(Origin.CHARGING);
                for (int k = 0; k < HIGHEST; k++) {
                    amplitude[k] = (k == 0 ? 0.7 : 0) + 0.5 * ripple[k] / ripple[1] + 0.35 * pulses[k] / pulses[0];
                }
            }
            case RASP -> Arrays.fill(amplitude, LAST_HUM_HARMONIC, HIGHEST, 1);
            default -> {
                for (int k = 1; k <= HIGHEST; k++) {
                    amplitude[k - 1] = fourier(origin, k);
                }
            }
        }
        return amplitude;
    }

    private static double fourier(Origin origin, int k) {
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < STEPS; i++) {
            double degrees = (i + 0.5) * 360 / STEPS;
            double x = idealWave(origin, degrees);
            real += x * Math.cos(Math.toRadians(k * degrees));
            imaginary += x * Math.sin(Math.toRadians(k * degrees));
        }
        double amplitude = 2 * Math.hypot(real, imaginary) / STEPS;
        return amplitude < 1e-6 ? 0 : amplitude;
    }

    private static double idealWave(Origin origin, double degrees) {
        double sine = Math.sin(Math.toRadians(degrees));
        double inHalf = degrees % 180;
        return switch (origin) {
            case RECTIFIER -> Math.abs(sine);
            case DIMMER -> inHalf >= 90 ? sine : 0;
            case CHARGING -> Math.abs(inHalf - 90) < 15 ? Math.signum(sine) * Math.cos(Math.PI * (inHalf - 90) / 30) : 0;
            default -> throw new IllegalArgumentException("mains: " + origin + " has no ideal wave");
        };
    }
}
