package evenwood.live;

import java.util.concurrent.TimeUnit;

/**
 * How patient a live take is.
 *
 * @param stallNanos      no frames for so long while running: the device is blocked
 * @param firstBlockNanos no frames for so long after opening: it is opened again
 * @param retryNanos      pause before each attempt to open again
 * @param tickNanos       how often the watchdog looks and the state is published
 * @param pollNanos       how long the analysis rests when the ring is empty
 */
record LiveTiming(long stallNanos, long firstBlockNanos, long retryNanos, long tickNanos, long pollNanos) {
    /**
     * Our choice. 500 ms and one tick stay well within the second in which a loss must be noticed; sound servers deliver
     * their first block up to 1.7 s after opening; 5 ms of rest are two hundred wake-ups a second, under one percent of a core.
     */
    static final LiveTiming USUAL = new LiveTiming(millis(500), millis(3000), millis(200), millis(100), millis(5));

    private static long millis(long ms) {
        return TimeUnit.MILLISECONDS.toNanos(ms);
    }
}
