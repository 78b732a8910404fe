package evenwood.measure;

/**
 * One howl that started.
 *
 * @param frequencyHz       where
 * @param startSeconds      when the growth began
 * @param toldSeconds       when a live listener would have been told
 * @param growthDbPerSecond how fast it grew
 */
public record Ring(double frequencyHz, double startSeconds, double toldSeconds, double growthDbPerSecond) { }
