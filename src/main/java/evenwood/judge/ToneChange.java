package evenwood.judge;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;

/**
 * By how much a word for a tone fits a take more than the one it is compared with: boomier, less harsh.
 *
 * @param amountDb    positive is more of the fault, negative less
 * @param deviationDb standard error of it
 * @param ofItsOwn    whether it is there beside every other, likelier change: a nasal tone is also a little boxy, which is no
 *                    second change
 */
public record ToneChange(double amountDb, double deviationDb, boolean ofItsOwn) {
    /** A change that chance makes once in eighty. */
    private static final double DEVIATIONS = 2.5;

    /** For every tone fault; empty when the two takes share too little to tell. */
    public static Optional<Map<Fault, ToneChange>> between(ToneComparison comparison) {
        ToneEvidence evidence = new ToneEvidence(comparison.difference(), comparison.spread(), comparison.lowestNoteHz());
        if (evidence.isEmpty()) {
            return Optional.empty();
        }
        Map<Fault, ToneChange> changes = new EnumMap<>(Fault.class);
        for (ToneRegion region : ToneRegion.values()) {
            ToneEvidence.Support change = evidence.change(region);
            changes.put(region.fault(), new ToneChange(change.amountDb(), change.deviationDb(), false));
        }
        EnumSet<ToneRegion> left = EnumSet.allOf(ToneRegion.class);
        for (ToneRegion likeliest = likeliest(left, evidence); likeliest != null; likeliest = likeliest(left, evidence)) {
            ToneEvidence.Support change = evidence.change(likeliest);
            changes.put(likeliest.fault(), new ToneChange(change.amountDb(), change.deviationDb(), true));
            evidence.accept(likeliest);
            left.remove(likeliest);
        }
        return Optional.of(changes);
    }

    private static ToneRegion likeliest(EnumSet<ToneRegion> left, ToneEvidence evidence) {
        ToneRegion best = null;
        double most = DEVIATIONS;
        for (ToneRegion region : left) {
            ToneEvidence.Support change = evidence.change(region);
            double deviations = Math.abs(change.amountDb()) / change.deviationDb();
            if (deviations > most) {
                most = deviations;
                best = region;
            }
        }
        return best;
    }
}
