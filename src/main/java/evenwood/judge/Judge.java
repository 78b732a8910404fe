package evenwood.judge;

import evenwood.measure.TakeReadings;
import evenwood.wiring.ChainReport;
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

    /** With a chain nobody knows. */
    public Verdict judge(TakeReadings readings, Optional<ToneComparison> tone) {
        return judge(readings, tone, Optional.empty());
    }

    /** @param chain how the instrument is plugged in, computed */
    public Verdict judge(TakeReadings readings, Optional<ToneComparison> tone, Optional<ChainReport> chain) {
        List<Finding> findings = new ArrayList<>();
        findings.addAll(DistortionRule.findings(readings));
        findings.addAll(LevelRule.findings(readings, window));
        findings.addAll(NoiseRule.findings(readings));
        findings.addAll(InterruptionRule.findings(readings));
        findings.addAll(RingingRule.findings(readings));
        Optional<LoadedPickup> loaded = chain.flatMap(report -> LoadedPickup.of(readings, tone, report));
        Optional<WiringComparison> wiring = chain.map(report -> WiringComparison.of(readings, report, loaded));
        tone.ifPresent(comparison -> {
            findings.addAll(ToneRule.findings(comparison));
            if (loaded.isEmpty()) {
                LoadedPickupRule.finding(comparison, findings).ifPresent(findings::add);
            }
        });
        loaded.flatMap(each -> each.finding(wiring)).ifPresent(findings::add);
        findings.addAll(NoteEvennessRule.findings(readings, findings));
        findings.sort(Finding.STRONGEST_FIRST);
        return new Verdict(findings, MissingRule.missing(readings), tone, wiring);
    }
}
