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
        return judge(readings, tone, Optional.empty(), Optional.empty());
    }

    /**
     * @param chain how the instrument is plugged in, computed
     * @param room  bass that the room makes
     */
    public Verdict judge(TakeReadings readings, Optional<ToneComparison> tone, Optional<ChainReport> chain, Optional<RoomBass> room) {
        List<Finding> findings = new ArrayList<>();
        findings.addAll(DistortionRule.findings(readings));
        findings.addAll(LevelRule.findings(readings, window));
        findings.addAll(NoiseRule.findings(readings));
        findings.addAll(InterruptionRule.findings(readings));
        findings.addAll(RingingRule.findings(readings));
        tone.ifPresent(comparison -> findings.addAll(ToneRule.findings(comparison)));
        Optional<LoadedPickup> loaded = chain.isPresent() ? LoadedPickup.of(readings, tone, window, chain.get()) : LoadedPickup.of(readings, tone, window);
        Optional<WiringComparison> wiring = chain.map(report -> WiringComparison.of(readings, report, loaded));
        boolean quiet = findings.stream().anyMatch(finding -> finding.fault() == Fault.TOO_QUIET);
        loaded.filter(each -> chain.isPresent() || quiet).flatMap(each -> each.finding(quiet, wiring)).ifPresent(findings::add);
        findings.addAll(NoteEvennessRule.findings(readings, findings));
        findings.sort(Finding.STRONGEST_FIRST);
        return new Verdict(room.map(each -> each.named(findings)).orElse(findings), MissingRule.missing(readings, tone, findings), tone, wiring);
    }
}
