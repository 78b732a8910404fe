package evenwood.judge;

import java.util.List;

/**
 * What is wrong with a take, and what could not be judged.
 *
 * @param findings strongest first
 * @param missing  what more playing or setup would be needed
 */
public record Verdict(List<Finding> findings, List<Statement> missing) {
    public Verdict {
        findings = List.copyOf(findings);
        missing = List.copyOf(missing);
    }

    public boolean hasStrong() {
        return findings.stream().anyMatch(Finding::isStrong);
    }

    public boolean has(Fault fault) {
        return findings.stream().anyMatch(finding -> finding.fault() == fault);
    }
}
