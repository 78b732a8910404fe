package evenwood.journal;

import evenwood.measure.BandLevel;
import evenwood.measure.NotewiseDifference;
import evenwood.measure.TakeReadings;
import evenwood.measure.ToneDifference;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/**
 * Two kept takes side by side: what differs, and whether it means anything.
 *
 * @param before   the one compared with
 * @param after    the other
 * @param tone     after − before, band by band with its uncertainty; of the same notes where both have them
 * @param noteWise whether the tone rests on shared notes; otherwise another song may be part of the difference
 * @param readings level, noise and balance
 * @param settings controls that stood elsewhere
 * @param gone     findings of the first that the second has not
 * @param come     findings of the second that the first had not
 */
public record TakeComparison(KeptTake before, KeptTake after, ToneDifference tone, boolean noteWise, List<ReadingChange> readings,
                             List<SettingChange> settings, List<String> gone, List<String> come) {
    public static final double CONFIDENCE = 0.98;
    /** 95 % of what register, key and dynamics do to a band of one take (docs/targets.md), for two takes. */
    private static final double PLAYING_HALF_WIDTH_DB = 1.96 * 2.1 * Math.sqrt(2);
    private static final double TOLERANCE_DB = 1;

    /**
     * @param reading    which
     * @param before     −Infinity when it was not measured
     * @param after      −Infinity when it was not measured
     * @param scatter    two takes without any change differ less than this; empty when there are too few takes to know
     */
    public record ReadingChange(Reading reading, double before, double after, OptionalDouble scatter) {
        /** 0 when one of them was not measured. */
        public double difference() {
            return Double.isFinite(before) && Double.isFinite(after) ? after - before : 0;
        }

        /** Whether chance hardly explains it; never claimed when the usual scatter is not known. */
        public boolean isReal() {
            return scatter.isPresent() && Math.abs(difference()) > scatter.getAsDouble();
        }
    }

    /**
     * @param control its name
     * @param before  position as one reads it off; empty when that take's rig has no such control
     * @param after   likewise
     */
    public record SettingChange(String control, Optional<String> before, Optional<String> after) { }

    /** @param history a reading's takes of the same instrument, to know how much it usually scatters */
    static TakeComparison of(KeptTake before, KeptTake after, Function<Reading, List<ReadingPoint>> history) {
        TakeReadings first = before.assessment().readings();
        TakeReadings second = after.assessment().readings();
        ToneDifference notes = NotewiseDifference.between(second.noteSpectra(), first.noteSpectra());
        List<ReadingChange> readings = Reading.ALL.stream().filter(reading -> !reading.name().startsWith("band")).map(reading -> new ReadingChange(reading,
            reading.in(first, before.rig()), reading.in(second, after.rig()), UsualScatter.ofDifference(history.apply(reading), CONFIDENCE)))
            .filter(change -> Double.isFinite(change.before()) || Double.isFinite(change.after())).toList();
        return new TakeComparison(before, after, notes.isEmpty() ? bandWise(first, second) : notes, !notes.isEmpty(), readings,
            settings(before.rig(), after.rig()), without(before, after), without(after, before));
    }

    private static ToneDifference bandWise(TakeReadings before, TakeReadings after) {
        List<ToneDifference.Band> bands = new ArrayList<>();
        for (BandLevel now : after.spectrum().bands()) {
            before.spectrum().bands().stream().filter(then -> then.band().equals(now.band()) && then.isAboveNoise() && now.isAboveNoise()
                && Double.isFinite(then.relativeDb()) && Double.isFinite(now.relativeDb())).findFirst()
                .ifPresent(then -> bands.add(new ToneDifference.Band(now.band(), now.relativeDb() - then.relativeDb(),
                    Math.hypot(PLAYING_HALF_WIDTH_DB, Math.hypot(now.relativeHalfWidthDb(), then.relativeHalfWidthDb())), TOLERANCE_DB, 1)));
        }
        return new ToneDifference(bands);
    }

    private static List<SettingChange> settings(Optional<Rig> before, Optional<Rig> after) {
        List<SettingChange> changes = new ArrayList<>();
        for (Setting then : before.map(Rig::settings).orElse(List.of())) {
            Optional<String> now = after.flatMap(rig -> rig.setting(then.control().name())).map(Setting::say);
            if (!now.equals(Optional.of(then.say()))) {
                changes.add(new SettingChange(then.control().name(), Optional.of(then.say()), now));
            }
        }
        for (Setting now : after.map(Rig::settings).orElse(List.of())) {
            if (before.flatMap(rig -> rig.setting(now.control().name())).isEmpty()) {
                changes.add(new SettingChange(now.control().name(), Optional.empty(), Optional.of(now.say())));
            }
        }
        return changes;
    }

    private static List<String> without(KeptTake one, KeptTake other) {
        List<String> others = other.line().faults().stream().map(TakeComparison::fault).toList();
        return one.line().faults().stream().map(TakeComparison::fault).filter(fault -> !others.contains(fault)).distinct().toList();
    }

    private static String fault(String withSeverity) {
        return withSeverity.replaceFirst(":.*", "");
    }
}
