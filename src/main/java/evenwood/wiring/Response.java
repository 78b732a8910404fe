package evenwood.wiring;

import java.util.Arrays;
import java.util.function.IntToDoubleFunction;

/** Level over frequency from 20 Hz to 20 kHz. Immutable. */
public final class Response {
    static final double LOWEST_HZ = 20;
    static final double HIGHEST_HZ = 20_000;
    private static final int STEPS = 240; // a 24th of an octave

    private final double[] levelsDb;

    private Response(double[] levelsDb) {
        this.levelsDb = levelsDb;
    }

    static Response of(IntToDoubleFunction levelDb) {
        double[] levels = new double[STEPS + 1];
        for (int i = 0; i <= STEPS; i++) {
            levels[i] = levelDb.applyAsDouble(i);
        }
        return new Response(levels);
    }

    public static int points() {
        return STEPS + 1;
    }

    public static double frequencyHz(int point) {
        return LOWEST_HZ * Math.pow(HIGHEST_HZ / LOWEST_HZ, (double) point / STEPS);
    }

    public double levelDb(int point) {
        return levelsDb[point];
    }

    /** Between the points straight over the logarithm of the frequency; the ends go on level. */
    public double atHz(double frequencyHz) {
        double place = Math.max(0, Math.min(STEPS, STEPS * Math.log(frequencyHz / LOWEST_HZ) / Math.log(HIGHEST_HZ / LOWEST_HZ)));
        int below = Math.min(STEPS - 1, (int) place);
        return levelsDb[below] + (place - below) * (levelsDb[below + 1] - levelsDb[below]);
    }

    /** The power mean over the octaves of a band, every octave counting alike. */
    double meanDb(double fromHz, double toHz) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i <= STEPS; i++) {
            if (frequencyHz(i) >= fromHz && frequencyHz(i) <= toHz) {
                sum += Math.pow(10, levelsDb[i] / 10);
                count++;
            }
        }
        return 10 * Math.log10(sum / count);
    }

    /** The integral over the band of a density in V²/Hz at each point, by the trapezoid rule over the logarithm of the frequency. */
    static double integral(IntToDoubleFunction density) {
        double step = Math.log(HIGHEST_HZ / LOWEST_HZ) / STEPS;
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            double weight = i == 0 || i == STEPS ? 0.5 : 1;
            sum += weight * density.applyAsDouble(i) * frequencyHz(i) * step;
        }
        return sum;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Response response && Arrays.equals(levelsDb, response.levelsDb);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(levelsDb);
    }
}
