package evenwood.judge;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Boomy, boxy, nasal, harsh, thin, dull: what a {@link ToneComparison} speaks for.
 *
 * <p>How: {@link ToneEvidence} for each region; the likeliest first, and what else there is once that is accounted for, so
 * that an overall tilt is one finding and not six. Probability: a logistic curve over the evidence against all other
 * explanations together. Severity: by probability and by how many dB. Against an instrument's usual tone, where even large faults
 * seldom get surer (docs/accuracy.md), the likeliest word is said from one in four and called clear from 0.7; every further word,
 * and every word against another take, from 0.4 and 0.85. Source of the curves: {@link ToneCalibration}.
 */
public final class ToneRule {
    private static final int MOST_FINDINGS = 3;
    private static final double SLIGHT_PROBABILITY = 0.4;
    private static final double CLEAR_PROBABILITY = 0.85;
    private static final double SLIGHT_AGAINST_INSTRUMENT = 0.25;
    private static final double CLEAR_AGAINST_INSTRUMENT = 0.7;
    private static final double STRONG_PROBABILITY = 0.95;
    private static final double LEAST_DB = 2;
    private static final double CLEAR_DB = 4;
    private static final double STRONG_DB = 9;

    private ToneRule() { }

    /** What the comparison speaks for, likeliest first. */
    public static List<Finding> findings(ToneComparison comparison) {
        ToneEvidence evidence = new ToneEvidence(comparison.difference(), comparison.spread(), comparison.lowestNoteHz());
        List<Finding> findings = new ArrayList<>();
        EnumSet<ToneRegion> left = EnumSet.allOf(ToneRegion.class);
        while (!evidence.isEmpty() && findings.size() < MOST_FINDINGS) {
            Map<ToneRegion, ToneEvidence.Support> supports = evidence.supports();
            ToneRegion best = left.stream().max(java.util.Comparator.comparingDouble(region -> probability(comparison, region, supports))).orElseThrow();
            Optional<Finding> finding = finding(comparison, best, supports, findings.isEmpty());
            if (finding.isEmpty()) {
                break;
            }
            findings.add(finding.get());
            left.remove(best);
            evidence.accept(best);
        }
        return findings;
    }

    /** For fitting and evaluation: how much speaks for each word against "nothing wrong" and all other words, natural logarithm of the odds. */
    public static Map<ToneRegion, Double> logOdds(ToneComparison comparison) {
        ToneEvidence evidence = new ToneEvidence(comparison.difference(), comparison.spread(), comparison.lowestNoteHz());
        Map<ToneRegion, Double> odds = new EnumMap<>(ToneRegion.class);
        if (!evidence.isEmpty()) {
            Map<ToneRegion, ToneEvidence.Support> supports = evidence.supports();
            supports.forEach((region, support) -> odds.put(region, support.ownLogOdds(cleanWeight(comparison))));
        }
        return odds;
    }

    /** That the region is at fault, against no fault and all others. */
    private static double probability(ToneComparison comparison, ToneRegion region, Map<ToneRegion, ToneEvidence.Support> supports) {
        return ToneCalibration.probability(comparison.against(), region, supports.get(region).ownLogOdds(cleanWeight(comparison)));
    }

    /** Against an instrument half of all takes are as they should be and a twelfth has each fault; another take is chosen because something is off. */
    private static double cleanWeight(ToneComparison comparison) {
        return comparison.against() == ToneComparison.Against.INSTRUMENT ? ToneRegion.values().length : 1;
    }

    private static Optional<Finding> finding(ToneComparison comparison, ToneRegion region, Map<ToneRegion, ToneEvidence.Support> supports,
                                             boolean first) {
        ToneEvidence.Support support = supports.get(region);
        double probability = probability(comparison, region, supports);
        boolean instrument = comparison.against() == ToneComparison.Against.INSTRUMENT;
        if (probability < (first && instrument ? SLIGHT_AGAINST_INSTRUMENT : SLIGHT_PROBABILITY) || support.amountDb() < LEAST_DB) {
            return Optional.empty();
        }
        Severity severity = probability >= STRONG_PROBABILITY && support.amountDb() >= STRONG_DB ? Severity.STRONG
            : probability >= (first && instrument ? CLEAR_AGAINST_INSTRUMENT : CLEAR_PROBABILITY) && support.amountDb() >= CLEAR_DB ? Severity.CLEAR : Severity.SLIGHT;
        BandHz where = region.bandHz(comparison.lowestNoteHz());
        String against = instrument ? ".instrument" : ".take";
        return Optional.of(new Finding(region.fault(), severity, probability, Statement.of(region.fault().id() + against,
            where.lowHz(), where.highHz(), support.amountDb(), 1.96 * support.deviationDb()), Optional.of(where)));
    }
}
