package evenwood.judge;

import java.util.List;
import java.util.Optional;

/**
 * What is wrong with a take, and what could not be judged.
 *
 * @param findings strongest first
 * @param missing  what more playing or setup would be needed
 * @param tone     the tone beside the wanted one, when it is known what is wanted
 * @param wiring   the take beside what its chain should give, when the chain is known
 */
public record Verdict(List<Finding> findings, List<Statement> missing, Optional<ToneComparison> tone, Optional<WiringComparison> wiring) {
    public Verdict {
        findings = List.copyOf(findings);
        missing = List.copyOf(missing);
    }

    public Verdict(List<Finding> findings, List<Statement> missing) {
        this(findings, missing, Optional.empty(), Optional.empty());
    }

    public boolean hasStrong() {
        return findings.stream().anyMatch(Finding::isStrong);
    }

    public boolean has(Fault fault) {
        return findings.stream().anyMatch(finding -> finding.fault() == fault);
    }
}
