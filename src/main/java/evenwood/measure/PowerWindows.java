package evenwood.measure;

import java.util.Arrays;

/**
 * Mean power of the last 400 ms and 3 s, renewed every 10 ms.
 *
 * <p>How: a step is 10 ms; at each the sum over the 100 ms that end there (a hop) is kept, and a window adds up hops that
 * lie one behind the other. Nothing is ever subtracted, so silence after a loud sound is exactly silent.
 * <p>Thread: one owner; nothing here allocates but the constructor.
 */
final class PowerWindows {
    static final int STEPS_PER_SECOND = 100;
    private static final int STEPS_PER_HOP = 10;
    static final int MOMENTARY_HOPS = 4;
    static final int SHORT_TERM_HOPS = 30;
    private static final int REMEMBERED_STEPS = SHORT_TERM_HOPS * STEPS_PER_HOP;

    private final double framesPerHop;
    private final double[] stepSums = new double[STEPS_PER_HOP];
    private final double[] hopSums = new double[REMEMBERED_STEPS];
    private long steps;

    PowerWindows(int sampleRateHz) {
        framesPerHop = (double) sampleRateHz * STEPS_PER_HOP / STEPS_PER_SECOND;
    }

    /** Takes the sum of squares of the next 10 ms. [audio thread] */
    void add(double sumOfSquares) {
        stepSums[(int) (steps % STEPS_PER_HOP)] = sumOfSquares;
        double hopSum = 0;
        for (double stepSum : stepSums) {
            hopSum += stepSum;
        }
        hopSums[(int) (steps % REMEMBERED_STEPS)] = hopSum;
        steps++;
    }

    long steps() {
        return steps;
    }

    /** Whether whole 100 ms have been heard: the moment for gating blocks. */
    boolean atHopEnd() {
        return steps % STEPS_PER_HOP == 0;
    }

    boolean isFull(int hops) {
        return steps >= (long) hops * STEPS_PER_HOP;
    }

    /** Mean power of the last so many hops. */
    double mean(int hops) {
        return sum(steps, hops) / (hops * framesPerHop);
    }

    /** What a window would hold if so many hops of silence had followed the last whole hop. */
    double meanAfterSilence(int hops, int silentHops) {
        return sum(steps - steps % STEPS_PER_HOP, hops - silentHops) / (hops * framesPerHop);
    }

    /** Whether that window would be full. */
    boolean isFullAfterSilence(int hops, int silentHops) {
        return steps / STEPS_PER_HOP + silentHops >= hops;
    }

    void reset() {
        Arrays.fill(stepSums, 0);
        Arrays.fill(hopSums, 0);
        steps = 0;
    }

    private double sum(long endStep, int hops) {
        double sum = 0;
        for (int hop = 0; hop < hops; hop++) {
            long step = endStep - 1 - (long) hop * STEPS_PER_HOP;
            if (step >= 0) {
                sum += hopSums[(int) (step % REMEMBERED_STEPS)];
            }
        }
        return sum;
    }
}
