package evenwood.live;

/**
 * A stretch of a live take that was not heard.
 *
 * @param cause           why
 * @param startSeconds    where it began, in seconds since the first frame, with earlier gaps counted
 * @param durationSeconds how long it was
 * @param lostFrames      the same in frames; by the wall clock, so an estimate, unless the cause is {@code OVERRUN}
 */
public record LiveGap(Cause cause, double startSeconds, double durationSeconds, long lostFrames) {
    public enum Cause {
        /** The device stopped, blocked or was away. */
        DEVICE_AWAY,
        /** The analysis could not keep up and the ring was full: counted exactly. */
        OVERRUN,
        /** The system delivered less than the clock says there was. */
        SYSTEM_LOST
    }

    static LiveGap of(Cause cause, long startFrame, long lostFrames, int sampleRateHz) {
        return new LiveGap(cause, (double) startFrame / sampleRateHz, (double) lostFrames / sampleRateHz, lostFrames);
    }
}
