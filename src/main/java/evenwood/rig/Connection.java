package evenwood.rig;

import java.util.Optional;

/**
 * How the instrument is plugged in: the electrical chain of a rig.
 *
 * @param pickup     where the signal begins
 * @param main       its way to the input
 * @param thru       a second way, from the thru socket of a box in the main line
 * @param sameOutlet whether all mains plugs share one outlet or power strip; empty when nobody said
 * @param owned      gear at hand
 */
public record Connection(Pickup pickup, Line main, Optional<Line> thru, Optional<Boolean> sameOutlet, Gear owned) {
}
