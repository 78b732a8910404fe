package evenwood.eq;

import java.util.Collection;

/**
 * What turning costs, so that small turns win over large ones and cuts over boosts.
 *
 * <p>How: in squared decibels of the whole difference. Each turn has a largest cut and a largest boost among the bands that
 * count; the cuts together cost {@value #CUT} and the boosts together {@value #BOOST} times the square of their sum, so that
 * one turn split in two is no cheaper. Source: our choice; "cut before you boost" is common practice, because a boost needs
 * headroom, lifts noise and brings howling nearer.
 *
 * @param cutDb   all turns' largest cuts together, as an amount
 * @param boostDb all turns' largest boosts together
 */
record Effort(double cutDb, double boostDb) {
    static final Effort NONE = new Effort(0, 0);
    private static final double CUT = 0.001;
    private static final double BOOST = 0.003;

    static Effort of(double[] effectDb, ToneLoss loss) {
        double cut = 0;
        double boost = 0;
        for (int i = 0; i < effectDb.length; i++) {
            if (loss.weight(i) > 0) {
                cut = Math.max(cut, -effectDb[i]);
                boost = Math.max(boost, effectDb[i]);
            }
        }
        return new Effort(cut, boost);
    }

    static Effort of(Collection<double[]> effects, ToneLoss loss) {
        Effort sum = NONE;
        for (double[] effect : effects) {
            sum = sum.plus(of(effect, loss));
        }
        return sum;
    }

    Effort plus(Effort other) {
        return new Effort(cutDb + other.cutDb, boostDb + other.boostDb);
    }

    /** The largest change of one turn in a band that counts. */
    double sizeDb() {
        return Math.max(cutDb, boostDb);
    }

    double cost() {
        return CUT * cutDb * cutDb + BOOST * boostDb * boostDb;
    }

    /** As residuals for a least-squares optimiser: the sum of their squares is the cost. */
    double[] residuals() {
        return new double[] {Math.sqrt(CUT) * cutDb, Math.sqrt(BOOST) * boostDb};
    }
}
