package evenwood.coach.hunt;

import evenwood.rig.HuntTable.Part;

/**
 * What one trial did to the noise.
 *
 * @param trial       its id
 * @param changeDb    after − before of the part that is hunted
 * @param deviationDb standard deviation of that difference
 */
public record TrialResult(String trial, double changeDb, double deviationDb) {
    /** A moment later nothing is quite the same: mains hum and what hangs on it wander by about a decibel, hiss by less. Our choice. */
    private static final double LINE_WANDER_DB = 1;
    private static final double HISS_WANDER_DB = 0.5;
    private static final double NOTABLE = 2;

    /** In a word. */
    public enum Outcome { GONE, FELL, SAME, ROSE }

    public TrialResult {
        if (!Double.isFinite(changeDb) || !(deviationDb > 0)) {
            throw new IllegalArgumentException("trial " + trial + ": changeDb=" + changeDb + ", deviationDb=" + deviationDb
                + ", but the change must be finite and the deviation above 0");
        }
    }

    public static TrialResult of(String trial, Part part, NoiseParts before, NoiseParts after) {
        double measured = Math.hypot(before.deviationDb().get(part), after.deviationDb().get(part));
        return new TrialResult(trial, after.levelDbfs().get(part) - before.levelDbfs().get(part), Math.hypot(measured, wanderDb(part)));
    }

    /** A change that is no more than twice its deviation is none. */
    public Outcome outcome() {
        if (Math.abs(changeDb) <= NOTABLE * deviationDb) {
            return Outcome.SAME;
        }
        return changeDb > 0 ? Outcome.ROSE : changeDb < ChangeLikelihood.GONE_UNDER_DB ? Outcome.GONE : Outcome.FELL;
    }

    static double wanderDb(Part part) {
        return part == Part.HISS ? HISS_WANDER_DB : LINE_WANDER_DB;
    }
}
