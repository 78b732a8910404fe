package evenwood.eq;

import evenwood.rig.Setting;
import java.util.List;
import java.util.Optional;

/**
 * One control turned, as the solver found it.
 *
 * @param from    the control's present setting; empty for a stage of an equaliser without a rig
 * @param to      its new setting; empty likewise
 * @param change  what this does to the sound
 * @param figures how much it does and how sure that is
 */
public record Turn(Optional<Setting> from, Optional<Setting> to, EqChain change, Figures figures) {
    /**
     * @param effectDb        change in each band
     * @param sizeDb          the largest change in a band that counts, as an amount
     * @param standardErrorDb of that size, from the uncertainty of the difference
     * @param benefitDb       by how much the whole difference would be larger (weighted RMS) without this turn
     */
    public record Figures(List<Double> effectDb, double sizeDb, double standardErrorDb, double benefitDb) {
        public Figures {
            effectDb = List.copyOf(effectDb);
        }
    }

    /** Its one filter, if there is no rig: shape, frequency, Q and gain are the move. */
    public EqFilter stage() {
        return change.filters().get(0);
    }
}
