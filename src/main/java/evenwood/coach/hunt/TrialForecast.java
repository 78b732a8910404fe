package evenwood.coach.hunt;

import evenwood.rig.HuntTable;

/**
 * How much each trial is expected to tell, in bits.
 *
 * <p>How: expected loss of entropy over all changes that might be measured (Lindley 1956, from memory); the likelihoods of a table
 * are computed once. Immutable.
 */
final class TrialForecast {
    private static final double LOWEST_DB = -40;
    private static final double HIGHEST_DB = 30;
    private static final double STEP_DB = 1;
    private static final int CHANGES = (int) ((HIGHEST_DB - LOWEST_DB) / STEP_DB) + 1;

    /** By trial, change and cause. */
    private final double[][][] likelihood;

    TrialForecast(HuntTable table, double deviationDb) {
        int causes = table.causes().size() + 1; // the last is none of them
        likelihood = new double[table.trials().size()][CHANGES][causes];
        for (int trial = 0; trial < likelihood.length; trial++) {
            for (int change = 0; change < CHANGES; change++) {
                for (int cause = 0; cause < causes; cause++) {
                    likelihood[trial][change][cause] = ChangeLikelihood.of(LOWEST_DB + change * STEP_DB, deviationDb,
                        NoiseHunt.chance(table, table.trials().get(trial), cause));
                }
            }
        }
    }

    /** @param trial its place in the table  @param probabilities of the causes now, summing to 1 */
    double bits(int trial, double[] probabilities) {
        double expected = 0;
        double whole = 0;
        for (double[] causes : likelihood[trial]) {
            double density = 0;
            double sum = 0;
            for (int i = 0; i < probabilities.length; i++) {
                double weight = probabilities[i] * causes[i];
                density += weight;
                sum += weight > 0 ? weight * Math.log(weight) : 0;
            }
            // density times the entropy of weight/density
            expected += density > 0 ? density * Math.log(density) - sum : 0;
            whole += density;
        }
        return (entropy(probabilities) - expected / whole) / Math.log(2);
    }

    private static double entropy(double[] probabilities) {
        double sum = 0;
        for (double p : probabilities) {
            sum -= p > 0 ? p * Math.log(p) : 0;
        }
        return sum;
    }
}
