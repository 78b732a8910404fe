package evenwood.eq;

import evenwood.measure.ToneDifference;
import java.util.List;

/**
 * What to turn, and what that is predicted to do.
 *
 * @param turns        most useful first; none when nothing needs or can be done
 * @param before       the difference as it was, its common level taken off
 * @param predicted    the difference afterwards, its common level taken off; uncertainty and tolerance as before
 * @param lossBeforeDb weighted RMS of the difference as it was (within the tolerance it counts little)
 * @param lossAfterDb  the same afterwards
 */
public record Solution(List<Turn> turns, ToneDifference before, ToneDifference predicted, double lossBeforeDb, double lossAfterDb) {
    public Solution {
        turns = List.copyOf(turns);
    }

    /** All turns as one chain: what the sound would go through. */
    public EqChain change() {
        EqChain all = EqChain.FLAT;
        for (Turn turn : turns) {
            all = all.then(turn.change());
        }
        return all;
    }

    /** Bands that stay out of tolerance whatever is turned, and surely so. */
    public List<ToneDifference.Band> unreached() {
        return predicted.bands().stream().filter(band -> band.weight() > 0
            && Math.abs(band.differenceDb()) > Math.max(band.toleranceDb(), band.uncertaintyDb()) + Solver.SMALLEST_TURN_DB).toList();
    }
}
