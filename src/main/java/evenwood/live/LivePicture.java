package evenwood.live;

import evenwood.measure.TakeReadings;

/**
 * The newest picture of a live take, immutable, for whoever looks.
 *
 * @param state    how the take stands
 * @param readings what was measured so far
 * @param number   grows by one with every new set of readings
 */
public record LivePicture(LiveState state, TakeReadings readings, long number) { }
