package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.judge.ToneChange;
import evenwood.judge.ToneComparison;
import evenwood.judge.Verdict;
import evenwood.measure.DistortionReading;
import evenwood.measure.NoiseReading;
import evenwood.measure.TakeReadings;
import evenwood.measure.Tone;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * Compares a take with the one before, fault by fault, though something else may have been played.
 *
 * <p>How: tone note by note ({@link ToneComparison#withTake}); noise in decibels, less what the gain was turned; level by the
 * highest peak; what distorts by how sure it was and is; clicks and gaps by how often they came.
 * <p>Source of the standard errors: what differs between phrases of one source when nothing was turned (AfterEvaluation,
 * docs/accuracy.md).
 */
final class TakeComparer {
    private static final double NOISE_DEVIATION_DB = 0.6;
    private static final double MINIMA_DEVIATION_DB = 2.5;
    private static final double PEAK_DEVIATION_DB = 1.2;
    /** Playing of the same person through the same gain; further apart and the gain was turned. */
    private static final double USUAL_PLAYING_CHANGE_DB = 5;
    private static final double PLAYING_DEVIATION_DB = 2.2;
    /** So far under everything a noise lies that was not found: our choice. */
    private static final double UNHEARD_UNDER_FLOOR_DB = 6;
    private static final double PLAIN_TONE_CHANGE_DB = 2;
    /** Two takes that share so little say nothing about a region. */
    private static final double MOST_TONE_DEVIATION_DB = 4;

    private final TakeReadings before;
    private final TakeReadings now;
    private final double gainDb;
    private final double gainDeviationDb;
    private final List<FaultChange> changes = new ArrayList<>();

    private TakeComparer(TakeReadings before, TakeReadings now, OptionalDouble knownGainDb) {
        this.before = before;
        this.now = now;
        double playing = before.hasPlaying() && now.hasPlaying() ? now.playingDbfs() - before.playingDbfs() : 0;
        boolean turned = Math.abs(playing) > USUAL_PLAYING_CHANGE_DB;
        gainDb = knownGainDb.orElse(turned ? playing : 0);
        gainDeviationDb = knownGainDb.isPresent() || !turned ? 0 : PLAYING_DEVIATION_DB;
    }

    /** @param knownGainDb by how much the gain was turned in between, if that is known */
    static Comparison compare(TakeReadings before, Verdict verdictBefore, TakeReadings now, Verdict verdictNow, OptionalDouble knownGainDb) {
        TakeComparer comparer = new TakeComparer(before, now, knownGainDb);
        EnumSet<Fault> found = EnumSet.noneOf(Fault.class);
        verdictBefore.findings().forEach(finding -> found.add(finding.fault()));
        verdictNow.findings().forEach(finding -> found.add(finding.fault()));
        comparer.distortion(found);
        comparer.level(found);
        comparer.noise(found);
        comparer.counts(found);
        comparer.tone(found);
        return new Comparison(before.take().name(), comparer.changes, List.of());
    }

    private void distortion(EnumSet<Fault> found) {
        if (found.contains(Fault.CLIPPING)) {
            boolean both = ClippedDrive.isClipped(before) && ClippedDrive.isClipped(now);
            // A take in which nothing is cut off may have had little more room, or much.
            measured(Fault.CLIPPING, ClippedDrive.db(now) - ClippedDrive.db(before), both ? ClippedDrive.DEVIATION_DB : Math.hypot(ClippedDrive.DEVIATION_DB, PEAK_DEVIATION_DB));
        }
        if (found.contains(Fault.OVERDRIVEN)) {
            presence(Fault.OVERDRIVEN, overdriven(before), overdriven(now));
        }
    }

    private static double overdriven(TakeReadings readings) {
        DistortionReading distortion = readings.distortion();
        boolean told = distortion.stage() == DistortionReading.Stage.BEFORE_CONVERTER;
        return distortion.verdict() == DistortionReading.Verdict.CLEAN || !told ? Math.min(distortion.probability(), 0.5) : distortion.probability();
    }

    private void level(EnumSet<Fault> found) {
        if (!before.hasPlaying() || !now.hasPlaying()) {
            return;
        }
        double higher = now.truePeak().truePeakDbtp() - before.truePeak().truePeakDbtp();
        if (found.contains(Fault.TOO_HOT)) {
            measured(Fault.TOO_HOT, higher, PEAK_DEVIATION_DB);
        }
        if (found.contains(Fault.TOO_QUIET)) {
            measured(Fault.TOO_QUIET, -higher, PEAK_DEVIATION_DB);
        }
    }

    private void noise(EnumSet<Fault> found) {
        noise(found, Fault.HUM, NoiseReading::humDbfs);
        noise(found, Fault.BUZZ, NoiseReading::buzzDbfs);
        noise(found, Fault.HISS, NoiseReading::hissDbfs);
        noise(found, Fault.TONE_INTERFERENCE, reading -> reading.tones().stream().mapToDouble(Tone::levelDbfs).max().orElse(Double.NEGATIVE_INFINITY));
    }

    private void noise(EnumSet<Fault> found, Fault fault, ToDoubleFunction<NoiseReading> levelDbfs) {
        if (!found.contains(fault) || !Double.isFinite(before.noise().floorDbfs()) || !Double.isFinite(now.noise().floorDbfs())) {
            return;
        }
        double was = heard(levelDbfs.applyAsDouble(before.noise()), before.noise());
        double is = heard(levelDbfs.applyAsDouble(now.noise()), now.noise());
        boolean rests = before.noise().method() == NoiseReading.Method.QUIET_PARTS && now.noise().method() == NoiseReading.Method.QUIET_PARTS;
        measured(fault, is - was - gainDb, Math.hypot(gainDeviationDb, rests ? NOISE_DEVIATION_DB : MINIMA_DEVIATION_DB));
    }

    /** What was not found lies at least somewhat under the floor. */
    private static double heard(double levelDbfs, NoiseReading noise) {
        return Double.isFinite(levelDbfs) ? levelDbfs : noise.floorDbfs() - UNHEARD_UNDER_FLOOR_DB;
    }

    private void counts(EnumSet<Fault> found) {
        count(found, Fault.CRACKLE, readings -> readings.clicks().count());
        count(found, Fault.DROPOUT, readings -> readings.dropouts().count());
        count(found, Fault.RINGING, readings -> readings.ringing().rings().size());
    }

    /**
     * Chances that the rates of two Poisson counts differ by more than half: normal distribution of the square roots, whose
     * variance is ¼ (Anscombe 1948, from memory).
     */
    private void count(EnumSet<Fault> found, Fault fault, ToDoubleFunction<TakeReadings> counted) {
        if (!found.contains(fault)) {
            return;
        }
        double was = Math.sqrt((counted.applyAsDouble(before) + 0.375) / Math.max(1, before.take().durationSeconds()));
        double is = Math.sqrt((counted.applyAsDouble(now) + 0.375) / Math.max(1, now.take().durationSeconds()));
        double deviation = 0.5 * Math.sqrt(1 / Math.max(1, before.take().durationSeconds()) + 1 / Math.max(1, now.take().durationSeconds()));
        FaultChange change = FaultChange.measured(fault, (is - was) / deviation, 1,
            Statement.of("after.counts", counted.applyAsDouble(before), counted.applyAsDouble(now)));
        changes.add(new FaultChange(fault, change.change(), change.confidence(), OptionalDouble.empty(), OptionalDouble.empty(), change.evidence()));
    }

    private void tone(EnumSet<Fault> found) {
        if (!before.hasPlaying() || !now.hasPlaying()) {
            return;
        }
        Optional<Map<Fault, ToneChange>> tones = ToneChange.between(ToneComparison.withTake(now, before));
        tones.ifPresent(each -> each.forEach((fault, change) -> {
            boolean known = change.deviationDb() <= MOST_TONE_DEVIATION_DB;
            if (known && (found.contains(fault) || change.ofItsOwn() && Math.abs(change.amountDb()) >= PLAIN_TONE_CHANGE_DB)) {
                measured(fault, change.amountDb(), change.deviationDb());
            }
        }));
    }

    private void measured(Fault fault, double changeDb, double deviationDb) {
        changes.add(FaultChange.measured(fault, changeDb, deviationDb, Statement.of("after.change", changeDb, 1.96 * deviationDb)));
    }

    private void presence(Fault fault, double was, double is) {
        changes.add(FaultChange.presence(fault, was, is, Statement.of("after.sure", was, is)));
    }
}
