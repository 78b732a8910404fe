package evenwood.coach.hunt;

import evenwood.rig.HuntTable;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * A hunt for the cause of a noise: which trial next, and what the trials so far say. Immutable: every result gives a new hunt.
 *
 * <p>How: Bayes over the table's causes. It starts from how often each is met and which parts of its noise are noticeable; every
 * measured change is weighed by {@link ChangeLikelihood}. A cause that is not in the table is among them, so that a listed one is not
 * believed merely because the others fit worse. The next trial is the one whose outcome is expected to tell most
 * (greatest expected loss of entropy; Lindley 1956, from memory). It ends when one cause is likely enough or nothing more can be told.
 * <p>Limits: one cause at a time; after its cure a new hunt finds the next.
 */
public final class NoiseHunt {
    static final double SURE = 0.95;
    public static final int MOST_TRIALS = 8;
    /** Wander and what a few seconds of measuring leave, together. */
    private static final double USUAL_DEVIATION = 1.4;
    private static final double LEAST_BITS = 0.01;

    private final HuntTable table;
    private final TrialForecast forecast;
    private final HuntTable.Part part;
    /** As the table's causes stand, and last that it is none of them. */
    private final double[] probabilities;
    private final List<TrialResult> results;
    private final Set<String> impossible;
    private final Optional<String> next;

    private NoiseHunt(HuntTable table, TrialForecast forecast, HuntTable.Part part, double[] probabilities, List<TrialResult> results, Set<String> impossible) {
        this.table = table;
        this.forecast = forecast;
        this.part = part;
        this.probabilities = probabilities;
        this.results = List.copyOf(results);
        this.impossible = Set.copyOf(impossible);
        next = chosen();
    }

    /** Begins with what can be noticed; hunted is the part that would be noticed most. @param facts what the rig has, see {@link RigFacts} */
    public static NoiseHunt start(HuntTable table, NoiseParts parts, Set<HuntTable.Need> facts) {
        return start(table, parts.worst(), parts.together(), facts);
    }

    static NoiseHunt start(HuntTable table, HuntTable.Part hunted, Set<HuntTable.Part> together, Set<HuntTable.Need> facts) {
        double[] priors = table.causes().stream().mapToDouble(cause -> cause.prior() * (facts.containsAll(cause.needs()) ? 1 : table.unlikely())).toArray();
        double[] probabilities = Arrays.copyOf(priors, priors.length + 1);
        probabilities[priors.length] = table.unlisted().prior() / (1 - table.unlisted().prior()) * sum(priors);
        for (HuntTable.Part part : HuntTable.Part.values()) {
            for (int i = 0; i < probabilities.length; i++) {
                double noticeable = i < priors.length ? table.causes().get(i).noticeable().get(part) : table.unlisted().noticeable();
                probabilities[i] *= together.contains(part) ? noticeable : 1 - noticeable;
            }
        }
        Set<String> impossible = table.trials().stream().filter(trial -> !facts.containsAll(trial.needs())).map(HuntTable.Trial::id)
            .collect(Collectors.toUnmodifiableSet());
        return new NoiseHunt(table, new TrialForecast(table, USUAL_DEVIATION * TrialResult.wanderDb(hunted)), hunted, normalised(probabilities), List.of(), impossible);
    }

    public HuntTable.Part part() {
        return part;
    }

    public List<TrialResult> results() {
        return results;
    }

    /** That it is none of the causes that are known. */
    public double unlisted() {
        return probabilities[probabilities.length - 1];
    }

    /** All known causes, likeliest first; what is missing to 1 is {@link #unlisted}. */
    public List<Suspect> ranking() {
        List<Suspect> suspects = new ArrayList<>();
        for (int i = 0; i < probabilities.length - 1; i++) {
            suspects.add(new Suspect(table.causes().get(i).id(), probabilities[i]));
        }
        suspects.sort(Comparator.comparingDouble(Suspect::probability).reversed());
        return List.copyOf(suspects);
    }

    public boolean isSure() {
        return ranking().get(0).probability() >= SURE;
    }

    /** The trial to make next; empty when the hunt is over. */
    public Optional<String> next() {
        return next;
    }

    private Optional<String> chosen() {
        if (isSure() || results.size() >= MOST_TRIALS) {
            return Optional.empty();
        }
        String best = null;
        double most = LEAST_BITS;
        for (int i = 0; i < table.trials().size(); i++) {
            HuntTable.Trial trial = table.trials().get(i);
            double bits = isOpen(trial) ? forecast.bits(i, probabilities) : 0;
            if (bits > most) {
                most = bits;
                best = trial.id();
            }
        }
        return Optional.ofNullable(best);
    }

    /** @throws IllegalArgumentException for a trial that is not in the table */
    public NoiseHunt after(TrialResult result) {
        HuntTable.Trial trial = table.trial(result.trial())
            .orElseThrow(() -> new IllegalArgumentException("hunt: trial=" + result.trial() + ", but the table has no such trial"));
        List<TrialResult> all = new ArrayList<>(results);
        all.add(result);
        return new NoiseHunt(table, forecast, part, normalised(weighed(trial, result.changeDb(), result.deviationDb())), all, impossible);
    }

    /** The player cannot make this trial. */
    public NoiseHunt without(String trial) {
        Set<String> more = new HashSet<>(impossible);
        more.add(trial);
        return new NoiseHunt(table, forecast, part, probabilities, results, more);
    }

    /** Trials the rig or the player makes impossible. */
    public Set<String> impossible() {
        return impossible;
    }

    private boolean isOpen(HuntTable.Trial trial) {
        return !impossible.contains(trial.id()) && results.stream().noneMatch(result -> result.trial().equals(trial.id()));
    }

    private double[] weighed(HuntTable.Trial trial, double changeDb, double deviationDb) {
        double[] weighed = new double[probabilities.length];
        for (int i = 0; i < weighed.length; i++) {
            weighed[i] = probabilities[i] * ChangeLikelihood.of(changeDb, deviationDb, chance(table, trial, i));
        }
        return weighed;
    }

    /** @param cause its place among the probabilities */
    static HuntTable.Chance chance(HuntTable table, HuntTable.Trial trial, int cause) {
        return cause < table.causes().size() ? table.chance(trial, table.causes().get(cause)) : table.unlisted().any();
    }

    private static double[] normalised(double[] weights) {
        double sum = sum(weights);
        double[] normalised = new double[weights.length];
        for (int i = 0; i < weights.length; i++) {
            normalised[i] = weights[i] / sum;
        }
        return normalised;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }
}
