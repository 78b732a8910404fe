package evenwood.wiring;

import evenwood.rig.CableRun;
import java.util.Optional;

/**
 * Where one thing is plugged into the next.
 *
 * @param number 1 is at the pickup; the thru line goes on counting
 * @param onThru whether it lies on the second way
 * @param from   what gives the signal
 * @param cable  what carries it; empty when both sit together
 * @param to     what takes it
 */
public record Joint(int number, boolean onThru, Device.Giving from, Optional<CableRun> cable, Device.Taking to) {
    public double metres() {
        return cable.map(CableRun::metres).orElse(0.0);
    }

    /** Whether two signal wires apart from the screen lead all the way. */
    public boolean isBalanced() {
        return from.outputBalanced() && to.inputBalanced() && cable.map(run -> run.cable().balanced()).orElse(true);
    }
}
