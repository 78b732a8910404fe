package evenwood.judge;

import java.util.List;
import java.util.Optional;

/**
 * Lack of bass and lack of level together: a piezo pickup into too low an impedance does both.
 *
 * <p>How: the corner of a first-order high-pass that explains the tone best, C·R of the pickup and its load; it must
 * explain more than no corner does, thin must be named, and the level low. Probability: that of both findings, times how
 * much better the corner explains the tone; a quiet player with a thin instrument does the same, so it never gets sure.
 * Source: f = 1/(2πRC), reference §7.1; how sure: our choice.
 */
final class LoadedPickupRule {
    private static final double LEAST_LOG_ODDS = 1;
    private static final double MOST_SURE = 0.85;

    private LoadedPickupRule() { }

    static Optional<Finding> finding(ToneComparison comparison, List<Finding> findings) {
        Optional<Finding> thin = find(findings, Fault.THIN);
        Optional<Finding> quiet = find(findings, Fault.TOO_QUIET);
        if (thin.isEmpty() || quiet.isEmpty()) {
            return Optional.empty();
        }
        ToneEvidence.Corner corner = new ToneEvidence(comparison.difference(), comparison.spread(), comparison.lowestNoteHz()).corner();
        if (corner.logOdds() < LEAST_LOG_ODDS) {
            return Optional.empty();
        }
        double shape = 1 - Math.exp(-corner.logOdds());
        double probability = MOST_SURE * thin.get().probability() * quiet.get().probability() * shape;
        return Optional.of(new Finding(Fault.LOADED_PICKUP, probability >= 0.5 ? Severity.CLEAR : Severity.SLIGHT, probability,
            Statement.of("loaded-pickup.evidence", corner.frequencyHz()), Optional.of(new BandHz(0, corner.frequencyHz()))));
    }

    private static Optional<Finding> find(List<Finding> findings, Fault fault) {
        return findings.stream().filter(finding -> finding.fault() == fault).findFirst();
    }
}
