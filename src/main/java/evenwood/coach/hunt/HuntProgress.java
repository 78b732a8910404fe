package evenwood.coach.hunt;

import evenwood.rig.HuntTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How far a hunt has come: what was measured, what follows from it, what to do next. Immutable; every step gives a new one.
 *
 * <p>Thread: any.
 *
 * @param before the noise as it was, to which every trial is compared
 * @param facts  what the rig has
 * @param hunt   the inference
 * @param steps  trials made so far, in order
 */
public record HuntProgress(NoiseParts before, Set<HuntTable.Need> facts, NoiseHunt hunt, List<Step> steps) {
    private static final double LIKELY = 0.5;

    /** One trial and the noise on both sides of it. */
    public record Step(TrialResult result, NoiseParts before, NoiseParts after) { }

    /** Where the hunt stands. */
    public enum Standing {
        /** No noise that would be noticed: nothing to hunt. */
        QUIET,
        /** There are trials to make. */
        OPEN,
        /** One cause explains the measurements, the others do not. */
        FOUND,
        /** No trial is left that would tell more; one cause is likelier than all others together. */
        LIKELY,
        /** No trial is left that would tell more, and no cause stands out. */
        UNDECIDED
    }

    public HuntProgress {
        facts = Set.copyOf(facts);
        steps = List.copyOf(steps);
    }

    /** @param wanted the part of the noise to hunt; empty for the one that is noticed most */
    public static HuntProgress start(HuntTable table, Set<HuntTable.Need> facts, NoiseParts before, Optional<HuntTable.Part> wanted) {
        return new HuntProgress(before, facts, NoiseHunt.start(table, wanted.orElse(before.worst()), before.together(), facts), List.of());
    }

    /** A trial was made: everything back as it was, then this one thing changed. */
    public HuntProgress after(String trial, NoiseParts after) {
        TrialResult result = TrialResult.of(trial, hunt.part(), before, after);
        List<Step> more = new ArrayList<>(steps);
        more.add(new Step(result, before, after));
        return new HuntProgress(before, facts, hunt.after(result), more);
    }

    /** The noise was measured anew with everything as it was; further trials are compared to this. */
    public HuntProgress since(NoiseParts newBefore) {
        return new HuntProgress(newBefore, facts, hunt, steps);
    }

    /** The player cannot make this trial. */
    public HuntProgress without(String trial) {
        return new HuntProgress(before, facts, hunt.without(trial), steps);
    }

    public Standing standing() {
        if (before.noticeable().isEmpty() && steps.isEmpty()) {
            return Standing.QUIET;
        }
        if (hunt.isSure()) {
            return Standing.FOUND;
        }
        return hunt.next().isPresent() ? Standing.OPEN : hunt.ranking().get(0).probability() >= LIKELY ? Standing.LIKELY : Standing.UNDECIDED;
    }

    /** What to try next; empty when there is nothing to hunt or nothing more to learn. */
    public Optional<String> next() {
        return standing() == Standing.OPEN ? hunt.next() : Optional.empty();
    }

    /** The likeliest cause, once something speaks for it. */
    public Optional<Suspect> cause() {
        Standing standing = standing();
        return standing == Standing.FOUND || standing == Standing.LIKELY ? Optional.of(hunt.ranking().get(0)) : Optional.empty();
    }
}
