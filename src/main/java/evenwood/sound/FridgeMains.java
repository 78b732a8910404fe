package evenwood.sound;

import java.util.SplittableRandom;

/**
 * The fridge's contribution: 50 Hz mains and its harmonics, drifting a little as mains do.
 *
 * <p>How: one cycle of hum (harmonics 1 to 5, falling; invented) and buzz (6 to 40, falling slowly) in a table, read with
 * interpolation at 50.03 Hz ± 0.01 Hz. Levels are RMS amplitudes.
 */
final class FridgeMains {
    private static final double MAINS_HZ = 50.03;
    private static final double DRIFT_HZ = 0.01;
    private static final double DRIFT_SECONDS = 23;
    private static final int LAST_HUM = 5;
    private static final int LAST_BUZZ = 40;
    private static final int STEPS = 8192;
    private static final double[] HUM = {1, 0.45, 0.35, 0.12, 0.15};

    private final int sampleRateHz;
    private final double[] cycle = new double[STEPS + 1];
    private double phase;
    private double driftPhase;

    FridgeMains(int sampleRateHz, double humRms, double buzzRms, long seed) {
        this.sampleRateHz = sampleRateHz;
        SplittableRandom random = new SplittableRandom(seed);
        double[] strength = new double[LAST_BUZZ];
        double humPower = 0;
        double buzzPower = 0;
        for (int k = 1; k <= LAST_BUZZ; k++) {
            strength[k - 1] = k <= LAST_HUM ? HUM[k - 1] : Math.pow(k, -0.6) * (k % 2 == 0 ? 1 : 0.5);
            humPower += k <= LAST_HUM ? strength[k - 1] * strength[k - 1] / 2 : 0;
            buzzPower += k > LAST_HUM ? strength[k - 1] * strength[k - 1] / 2 : 0;
        }
        for (int k = 1; k <= LAST_BUZZ; k++) {
            double amplitude = strength[k - 1] * (k <= LAST_HUM ? humRms / Math.sqrt(humPower) : buzzRms / Math.sqrt(buzzPower));
            double turn = random.nextDouble();
            for (int i = 0; i <= STEPS; i++) {
                cycle[i] += amplitude * Math.sin(2 * Math.PI * (k * i / (double) STEPS + turn));
            }
        }
    }

    double next() {
        driftPhase += 1 / (DRIFT_SECONDS * sampleRateHz);
        double hz = MAINS_HZ + DRIFT_HZ * Math.sin(2 * Math.PI * driftPhase);
        phase += hz / sampleRateHz;
        if (phase >= 1) {
            phase -= 1;
        }
        double at = phase * STEPS;
        int i = (int) at;
        return cycle[i] + (at - i) * (cycle[i + 1] - cycle[i]);
    }
}
