package evenwood.wiring;

import evenwood.rig.Connection;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The whole chain computed.
 *
 * @param connection what was computed
 * @param lowestHz   the instrument's lowest note
 * @param main       the way to the input
 * @param thru       the second way, if there is one
 */
public record ChainReport(Connection connection, double lowestHz, WayReport main, Optional<WayReport> thru) {
    /** All joints, the main line's first. */
    public List<JointReport> joints() {
        List<JointReport> all = new ArrayList<>(main.joints());
        thru.ifPresent(way -> all.addAll(way.joints()));
        return List.copyOf(all);
    }

    public List<WayReport> ways() {
        return thru.map(way -> List.of(main, way)).orElse(List.of(main));
    }
}
