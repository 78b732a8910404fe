package evenwood.wiring;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;

/**
 * Where the bass of a response is 3 dB down.
 *
 * <p>How: against the highest point up to 1 MHz for a capacitive source, which has no resonance and whose corner may lie above
 * hearing; against 1 kHz for every other, whose resonance in the treble says nothing about its bass. Source: our choice.
 */
final class BassCorner {
    private static final double LOWEST_HZ = 1;
    private static final double HIGHEST_HZ = 1e6;
    private static final double HALF_POWER_DB = 10 * Math.log10(0.5);
    private static final double STEP = Math.pow(2, 0.25);

    private BassCorner() { }

    /** @return empty when it lies under 1 Hz */
    static OptionalDouble of(DoubleUnaryOperator levelDb, boolean capacitive) {
        double top = 1000;
        if (capacitive) {
            for (double hz = LOWEST_HZ; hz < HIGHEST_HZ; hz *= STEP) {
                if (levelDb.applyAsDouble(hz) > levelDb.applyAsDouble(top)) {
                    top = hz;
                }
            }
        }
        double limit = levelDb.applyAsDouble(top) + HALF_POWER_DB;
        double high = top;
        while (high > LOWEST_HZ && levelDb.applyAsDouble(high / STEP) > limit) {
            high /= STEP;
        }
        return high <= LOWEST_HZ ? OptionalDouble.empty() : OptionalDouble.of(crossing(levelDb, high / STEP, high, limit));
    }

    private static double crossing(DoubleUnaryOperator levelDb, double below, double above, double limitDb) {
        double low = below;
        double high = above;
        while (high / low > 1.0001) {
            double middle = Math.sqrt(low * high);
            if (levelDb.applyAsDouble(middle) > limitDb) {
                high = middle;
            } else {
                low = middle;
            }
        }
        return Math.sqrt(low * high);
    }
}
