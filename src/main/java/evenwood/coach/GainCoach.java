package evenwood.coach;

import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.judge.TargetWindow;
import evenwood.judge.Verdict;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;

/**
 * Which gain to turn so that the hardest playing lands in the target window and stays clear of every stage that
 * overloads.
 *
 * <p>How: a stage that overloads is turned down in front of it, never behind it: turning down behind it only makes the
 * same distortion quieter. Its onset stays at the same level at our tap while the peaks come down under it. What is then
 * missing or too much for the window is made good behind that stage. Where a sweep told how much the box bears
 * ({@link TargetWindow#cleanUpToDbfs}), it is not driven harder than that, though nothing distorts yet. All is stated as if every equaliser move were made.
 * <p>Limits: when peaks are cut off nobody knows how high they wanted to go; the move says "at least" and asks for another
 * take. Without a rig moves are whole decibels; the smallest is 2 (our choice; under that a hand does not turn).
 */
final class GainCoach {
    private static final double SMALLEST_MOVE_DB = 2;
    /** So far from what is wanted, the stop of the control is worth a word; steps of a scale are finer. */
    private static final double SHORT_OF_DB = 4;
    /** What a flattened peak has lost at the least: the definition of the onset is 1 dB. */
    private static final double LEAST_LOST_DB = 1;

    private final TakeReadings readings;
    private final TargetWindow window;
    private final Optional<RigInUse> rig;
    private final Set<Move.Control> freed;
    private final double eqLiftDb;
    private final List<Move> moves = new ArrayList<>();
    private final List<Statement> missing = new ArrayList<>();

    private GainCoach(TakeReadings readings, TargetWindow window, Optional<RigInUse> rig, Set<Move.Control> freed, double eqLiftDb) {
        this.readings = readings;
        this.freed = freed;
        this.window = window;
        this.rig = rig;
        this.eqLiftDb = eqLiftDb;
    }

    /**
     * @param moves   in the order in which they must be made; numbered by whoever puts them among the others
     * @param missing what the rig's gains cannot reach
     */
    record Advice(List<Move> moves, List<Statement> missing) { }

    /** @param freed controls that were turned down to free a stage behind them  @param eqLiftDb by how much the equaliser moves lift the peaks */
    static Advice advise(TakeReadings readings, Verdict verdict, TargetWindow window, Optional<RigInUse> rig, Set<Move.Control> freed, double eqLiftDb) {
        GainCoach coach = new GainCoach(readings, window, rig, freed, eqLiftDb);
        if (!readings.hasPlaying()) {
            return new Advice(List.of(), List.of());
        }
        if (verdict.has(Fault.OVERDRIVEN)) {
            coach.freeTheStageBefore();
        } else if (verdict.has(Fault.CLIPPING)) {
            coach.freeTheConverter();
        } else {
            coach.intoTheWindow(verdict);
        }
        return new Advice(List.copyOf(coach.moves), List.copyOf(coach.missing));
    }

    private void freeTheStageBefore() {
        LevelKnob first = LevelKnob.first(rig);
        LevelKnob last = LevelKnob.last(rig);
        double peak = peakDbtp();
        OptionalDouble onset = onsetDbfs();
        double allowed = Math.min(onset.orElse(peak), peak) - window.underOnsetDb();
        double wanted = allowed - (peak + LEAST_LOST_DB);
        double down = add(first, wanted, true, onset.isPresent()
            ? Statement.of("gain.before-converter", onset.getAsDouble(), window.underOnsetDb())
            : Statement.of("gain.before-converter-unknown"), Fault.OVERDRIVEN);
        double after = peak + LEAST_LOST_DB + down + eqLiftDb;
        if (!window.contains(after) && !first.isSameAs(last)) {
            double change = window.aimDbtp() - after;
            add(last, change, false, Statement.of(change > 0 ? "gain.make-up" : "gain.take-down", window.lowDbtp(), window.highDbtp()),
                change > 0 ? Fault.OVERDRIVEN : Fault.TOO_HOT);
        }
    }

    /** As heard in this take or as a sweep told, whichever is lower. */
    private OptionalDouble onsetDbfs() {
        return DoubleStream.concat(readings.distortion().onsetDbfs().stream(), window.cleanUpToDbfs().stream()).min();
    }

    private void freeTheConverter() {
        double wanted = window.aimDbtp() - Math.max(0, peakDbtp()) - LEAST_LOST_DB - Math.max(0, eqLiftDb);
        add(LevelKnob.last(rig), wanted, true, Statement.of("gain.converter", window.lowDbtp(), window.highDbtp()), Fault.CLIPPING);
    }

    private void intoTheWindow(Verdict verdict) {
        if (window.isBoxTheLimit()) {
            underTheBoxsOnset(verdict);
            return;
        }
        double after = peakDbtp() + eqLiftDb;
        double change = window.aimDbtp() - after;
        if (after > window.highDbtp() && (verdict.has(Fault.TOO_HOT) || eqLiftDb > 0)) {
            String why = verdict.has(Fault.TOO_HOT) ? "gain.down" : "gain.after-eq";
            add(LevelKnob.any(rig), change, false, Statement.of(why, verdict.has(Fault.TOO_HOT) ? peakDbtp() : after,
                window.lowDbtp(), window.highDbtp()), Fault.TOO_HOT);
        } else if (after < window.lowDbtp() && verdict.has(Fault.TOO_QUIET)) {
            up(change);
        }
    }

    /** The first gain lifts the playing over the noise of everything behind it; but what was turned down to free a stage stays down. */
    private void up(double changeDb) {
        LevelKnob first = LevelKnob.first(rig);
        LevelKnob last = LevelKnob.last(rig);
        if (!freed.contains(first.name())) {
            add(first, changeDb, false, Statement.of("gain.up", peakDbtp(), window.lowDbtp(), window.highDbtp()), Fault.TOO_QUIET);
        } else if (first.isSameAs(last)) {
            missing.add(Statement.of("missing.gain-freed", first.name().ownName().orElse("")));
        } else {
            add(last, changeDb, false, Statement.of("gain.behind", window.lowDbtp(), window.highDbtp()), Fault.TOO_QUIET);
        }
    }

    /** The box may get no more than it bears; what the recorder then lacks is made good behind the box. */
    private void underTheBoxsOnset(Verdict verdict) {
        double ceiling = window.cleanCeilingDbtp();
        double after = peakDbtp() + eqLiftDb;
        if (after > ceiling) {
            after += add(LevelKnob.first(rig), ceiling - after, true,
                Statement.of("gain.box", after, window.cleanUpToDbfs().orElseThrow(), window.underOnsetDb()), Fault.TOO_HOT);
        } else if (verdict.has(Fault.TOO_QUIET)) {
            after += add(LevelKnob.first(rig), ceiling - after, true, Statement.of("gain.up-to-box", peakDbtp(), window.cleanUpToDbfs().orElseThrow(),
                window.underOnsetDb()), Fault.TOO_QUIET);
        }
        if (after < window.lowDbtp() && (verdict.has(Fault.TOO_QUIET) || !moves.isEmpty())) {
            add(LevelKnob.recorder(), window.aimDbtp() - after, false, Statement.of("gain.make-up-box", window.lowDbtp(), window.highDbtp()), Fault.TOO_QUIET);
        }
    }

    private double peakDbtp() {
        return readings.truePeak().truePeakDbtp();
    }

    /** @return the change that the move makes, 0 when it is too small to be made */
    private double add(LevelKnob knob, double changeDb, boolean atMost, Statement why, Fault fault) {
        Move move = knob.move(changeDb, atMost, why, fault);
        double change = move.changeDb().orElse(0);
        if (Math.abs(changeDb - change) >= SHORT_OF_DB) {
            missing.add(Statement.of(changeDb > change ? "missing.gain-up" : "missing.gain-down", Math.abs(changeDb - change), move.control().ownName().orElse("")));
        }
        if (Math.abs(change) < SMALLEST_MOVE_DB) {
            return 0;
        }
        moves.add(move);
        return change;
    }
}
