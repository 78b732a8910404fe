package evenwood.sound;

/**
 * What a piezo under the bridge of the demo's octave mandolin makes of the strings' force: the body's modes, and the
 * hard, quick, nasal colour of such pickups.
 *
 * <p>How: a direct share and parallel resonances, then the low-cut of a piezo into a finite resistance. All numbers are
 * invented for the demo; air and top modes lie where small flat-topped bodies of that size have them (common practice).
 * Modes that a sample rate cannot carry are left out.
 */
final class BridgePickup {
    private static final double DIRECT = 0.9;
    private static final double LOADING_HZ = 38;
    private static final double HIGHEST_SHARE_OF_RATE = 0.46;
    /** Hz, Q, gain. */
    private static final double[][] MODES = {
        {152, 9, 1.5}, {308, 10, 1.0}, {441, 14, 0.4}, {612, 18, 0.5}, {845, 16, 0.5}, {1180, 8, 0.6},
        {1720, 2.2, 0.8}, {2650, 1.8, 1.2}, {4200, 2.2, 1.0}, {6400, 2.2, 0.7},
    };

    private final Resonance[] modes;
    private final double leak;
    private double before;
    private double coupled;

    BridgePickup(int sampleRateHz) {
        int fitting = 0;
        while (fitting < MODES.length && MODES[fitting][0] < HIGHEST_SHARE_OF_RATE * sampleRateHz) {
            fitting++;
        }
        modes = new Resonance[fitting];
        for (int i = 0; i < fitting; i++) {
            modes[i] = Resonance.mode(sampleRateHz, MODES[i][0], MODES[i][1], MODES[i][2]);
        }
        leak = Math.exp(-2 * Math.PI * LOADING_HZ / sampleRateHz);
    }

    double next(double force) {
        double sum = DIRECT * force;
        for (Resonance mode : modes) {
            sum += mode.next(force);
        }
        coupled = leak * (coupled + sum - before);
        before = sum;
        return coupled;
    }

    void settle() {
        for (Resonance mode : modes) {
            mode.settle();
        }
        if (Math.abs(coupled) < 1e-20) {
            coupled = 0;
        }
    }
}
