package evenwood.sound;

/**
 * A phone that talks to its mast: radio slots rectified somewhere in the chain, 217 a second.
 *
 * <p>How: a frame of 4.615 ms has eight slots, one of them the phone's, every 26th frame idle; three bursts in the take.
 * Source: TDMA frame of 3GPP 45-series, from memory.
 */
final class PhoneBursts {
    private static final double FRAME_SECONDS = 0.004_615;
    private static final double SLOTS = 8;
    private static final int MULTIFRAME = 26;
    private static final double[] BURSTS_SECONDS = {0.6, 12.5, 38.0};
    private static final double BURST_SECONDS = 1.4;

    private final int sampleRateHz;
    private final double peak;
    private long frame;

    PhoneBursts(int sampleRateHz, double peak) {
        this.sampleRateHz = sampleRateHz;
        this.peak = peak;
    }

    double next() {
        double seconds = frame++ / (double) sampleRateHz;
        if (peak == 0) {
            return 0;
        }
        for (double start : BURSTS_SECONDS) {
            if (seconds >= start && seconds < start + BURST_SECONDS) {
                double frames = seconds / FRAME_SECONDS;
                boolean slot = frames - Math.floor(frames) < 1 / SLOTS && (long) frames % MULTIFRAME != 0;
                return slot ? peak : 0;
            }
        }
        return 0;
    }
}
