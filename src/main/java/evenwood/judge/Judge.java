package evenwood.judge;

import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Hears all rules about one take and puts what they found in order. */
public final class Judge {
    private final TargetWindow window;

    public Judge(TargetWindow window) {
        this.window = window;
    }

    /** Without a wanted tone. */
    public Verdict judge(TakeReadings readings) {
        return judge(readings, Optional.empty());
    }

    public Verdict judge(TakeReadings readings, Optional<ToneComparison> tone) {
        List<Finding> findings = new ArrayList<>();
        findings.addAll(DistortionRule.findings(readings));
        findings.addAll(LevelRule.findings(readings, window));
        findings.addAll(NoiseRule.findings(readings));
        findings.addAll(InterruptionRule.findings(readings));
        findings.addAll(RingingRule.findings(readings));
        tone.ifPresent(comparison -> {
            findings.addAll(ToneRule.findings(comparison));
            LoadedPickupRule.finding(comparison, findings).ifPresent(findings::add);
        });
        findings.addAll(NoteEvennessRule.findings(readings, findings));
        findings.sort(Finding.STRONGEST_FIRST);
        return new Verdict(findings, MissingRule.missing(readings), tone);
    }
}
