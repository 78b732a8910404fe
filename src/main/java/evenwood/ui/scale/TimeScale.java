package evenwood.ui.scale;

/** A stretch of a take as an axis. @param fromSeconds at the left  @param lengthSeconds from left to right */
public record TimeScale(double fromSeconds, double lengthSeconds) {
    public TimeScale {
        if (!(lengthSeconds > 0)) {
            throw new IllegalArgumentException("time scale: lengthSeconds=" + lengthSeconds + ", but it must be positive");
        }
    }

    /** The last so many seconds before a moment; a take that is shorter still fills the whole axis from its start. */
    public static TimeScale endingAt(double endSeconds, double lengthSeconds) {
        return new TimeScale(Math.max(0, endSeconds - lengthSeconds), lengthSeconds);
    }

    public double part(double seconds) {
        return Math.max(0, Math.min(1, (seconds - fromSeconds) / lengthSeconds));
    }

    public double seconds(double part) {
        return fromSeconds + Math.max(0, Math.min(1, part)) * lengthSeconds;
    }
}
