package evenwood.live;

/**
 * Finds sound the system lost without saying so: it delivers fewer frames than the clock says there were.
 *
 * <p>In: now and then, a time and the count of frames delivered until then. Out: frames newly found missing.
 * <p>How: what the clock says minus what came, smallest value of each second. A late or bunched delivery makes it larger
 * for a moment and small again; sound that is gone makes it larger for good. A step of more than 50 ms from one second to
 * the next is a loss; anything smaller is the difference between two clocks (a sound clock may be off by 0.1 %, that
 * is 1 ms a second) and becomes the new normal. The first seconds only settle it. Source: our choice.
 * <p>Thread: one owner; allocates nothing.
 */
final class WallClockLoss {
    private static final double NANOS_PER_SECOND = 1e9;
    private static final double STEP_SECONDS = 0.050;
    private static final int SETTLING_SECONDS = 2;

    private final int sampleRateHz;
    private long startNanos;
    private long startFrames;
    private boolean started;
    private double windowEndsSeconds;
    private double smallest;
    private double normal;
    private int windows;

    WallClockLoss(int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /** The device was opened anew: what is missing until now is known otherwise. */
    void restart() {
        started = false;
    }

    /** @return frames found missing that were not known before; 0 almost always */
    long lostFrames(long nanos, long deliveredFrames) {
        if (!started) {
            start(nanos, deliveredFrames);
            return 0;
        }
        double elapsedSeconds = (nanos - startNanos) / NANOS_PER_SECOND;
        double missing = elapsedSeconds * sampleRateHz - (deliveredFrames - startFrames);
        smallest = Math.min(smallest, missing);
        return elapsedSeconds >= windowEndsSeconds ? endWindow(elapsedSeconds) : 0;
    }

    private void start(long nanos, long deliveredFrames) {
        started = true;
        startNanos = nanos;
        startFrames = deliveredFrames;
        windowEndsSeconds = 1;
        smallest = Double.POSITIVE_INFINITY;
        windows = 0;
    }

    private long endWindow(double elapsedSeconds) {
        double step = smallest - normal;
        normal = smallest;
        smallest = Double.POSITIVE_INFINITY;
        windowEndsSeconds = elapsedSeconds + 1;
        windows++;
        return windows > SETTLING_SECONDS && step > STEP_SECONDS * sampleRateHz ? Math.round(step) : 0;
    }
}
