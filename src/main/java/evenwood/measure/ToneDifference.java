package evenwood.measure;

import java.util.List;

/**
 * How a tone differs from the one that is wanted, band by band: heard − wanted, so that too much is positive.
 *
 * <p>The same record whatever the wanted tone is: an instrument's target, another take, the take before.
 *
 * @param bands lowest first; bands nobody can say anything about may be left out
 */
public record ToneDifference(List<Band> bands) {
    public static final ToneDifference NONE = new ToneDifference(List.of());
    /** From the 95 % half-width of a normal distribution to its standard deviation. */
    private static final double HALF_WIDTH_PER_DEVIATION = 1.96;

    /**
     * @param band         which third octave
     * @param differenceDb heard − wanted; a level difference common to all bands does not matter
     * @param uncertaintyDb 95 % half-width of differenceDb, everything together (playing, target's spread, method);
     *                     +Infinity when nothing is known
     * @param toleranceDb  up to so far off in either direction the tone is fine
     * @param weight       how much the band counts for this instrument and tap, 0 (not at all) to 1 (fully); how much it
     *                     matters to the ear in general is not part of it
     */
    public record Band(ThirdOctave band, double differenceDb, double uncertaintyDb, double toleranceDb, double weight) {
        public Band {
            if (!Double.isFinite(differenceDb) || !(uncertaintyDb >= 0) || !(toleranceDb >= 0) || !(weight >= 0 && weight <= 1)) {
                throw new IllegalArgumentException("tone difference at " + band.nominalName() + ": differenceDb=" + differenceDb
                    + ", uncertaintyDb=" + uncertaintyDb + ", toleranceDb=" + toleranceDb + ", weight=" + weight
                    + ", but the difference must be finite, uncertainty and tolerance not negative, the weight 0 to 1");
            }
        }

        public double centreHz() {
            return band.centreHz();
        }

        public double standardErrorDb() {
            return uncertaintyDb / HALF_WIDTH_PER_DEVIATION;
        }

        /** How far the difference lies outside the tolerance; 0 inside. */
        public double excessDb() {
            return Math.max(0, Math.abs(differenceDb) - toleranceDb);
        }
    }

    public ToneDifference {
        bands = List.copyOf(bands);
        for (int i = 1; i < bands.size(); i++) {
            if (bands.get(i).band().compareTo(bands.get(i - 1).band()) <= 0) {
                throw new IllegalArgumentException("tone difference: " + bands.get(i).band().nominalName() + " after "
                    + bands.get(i - 1).band().nominalName() + ", but bands must rise");
            }
        }
    }

    public boolean isEmpty() {
        return bands.isEmpty();
    }
}
