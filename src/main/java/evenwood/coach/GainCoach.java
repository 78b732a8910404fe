package evenwood.coach;

import evenwood.judge.Fault;
import evenwood.judge.Statement;
import evenwood.judge.TargetWindow;
import evenwood.judge.Verdict;
import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * Which gain to turn so that the hardest playing lands in the target window and stays clear of every stage that
 * overloads.
 *
 * <p>How: a stage that overloads is turned down in front of it, never behind it: turning down behind it only makes the
 * same distortion quieter. Its onset stays at the same level at our tap while the peaks come down under it. What is then
 * missing or too much for the window is made good behind that stage.
 * <p>Limits: when peaks are cut off nobody knows how high they wanted to go; the move says "at least" and asks for another
 * take. Moves are whole decibels, the smallest is 2 (our choice; under that a hand does not turn).
 */
final class GainCoach {
    private static final double SMALLEST_MOVE_DB = 2;
    /** What a flattened peak has lost at the least: the definition of the onset is 1 dB. */
    private static final double LEAST_LOST_DB = 1;
    private static final Move.Control FIRST_GAIN = Move.Control.plain("control.first-gain");
    private static final Move.Control LAST_GAIN = Move.Control.plain("control.last-gain");
    private static final Move.Control ANY_GAIN = Move.Control.plain("control.gain");

    private final TakeReadings readings;
    private final TargetWindow window;
    private final List<Move> moves = new ArrayList<>();

    private GainCoach(TakeReadings readings, TargetWindow window) {
        this.readings = readings;
        this.window = window;
    }

    static List<Move> moves(TakeReadings readings, Verdict verdict, TargetWindow window) {
        GainCoach coach = new GainCoach(readings, window);
        if (!readings.hasPlaying()) {
            return List.of();
        }
        if (verdict.has(Fault.OVERDRIVEN)) {
            coach.freeTheStageBefore();
        } else if (verdict.has(Fault.CLIPPING)) {
            coach.freeTheConverter();
        } else {
            coach.intoTheWindow(verdict);
        }
        return coach.moves;
    }

    private void freeTheStageBefore() {
        double peak = peakDbtp();
        OptionalDouble onset = readings.distortion().onsetDbfs();
        double allowed = Math.min(onset.orElse(peak), peak) - window.underOnsetDb();
        double down = wholeDb(allowed - (peak + LEAST_LOST_DB));
        add(FIRST_GAIN, down, onset.isPresent()
            ? Statement.of("gain.before-converter", onset.getAsDouble(), window.underOnsetDb())
            : Statement.of("gain.before-converter-unknown"), Fault.OVERDRIVEN);
        double after = peak + LEAST_LOST_DB + down;
        if (!window.contains(after)) {
            double change = wholeDb(window.aimDbtp() - after);
            add(LAST_GAIN, change, Statement.of(change > 0 ? "gain.make-up" : "gain.take-down", window.lowDbtp(), window.highDbtp()),
                change > 0 ? Fault.OVERDRIVEN : Fault.TOO_HOT);
        }
    }

    private void freeTheConverter() {
        double change = wholeDb(window.aimDbtp() - Math.max(0, peakDbtp()) - LEAST_LOST_DB);
        add(LAST_GAIN, change, Statement.of("gain.converter", window.lowDbtp(), window.highDbtp()), Fault.CLIPPING);
    }

    private void intoTheWindow(Verdict verdict) {
        double change = wholeDb(window.aimDbtp() - peakDbtp());
        if (verdict.has(Fault.TOO_HOT)) {
            add(ANY_GAIN, change, Statement.of("gain.down", peakDbtp(), window.lowDbtp(), window.highDbtp()), Fault.TOO_HOT);
        } else if (verdict.has(Fault.TOO_QUIET)) {
            // The first gain lifts the playing over the noise of everything behind it.
            add(FIRST_GAIN, change, Statement.of("gain.up", peakDbtp(), window.lowDbtp(), window.highDbtp()), Fault.TOO_QUIET);
        }
    }

    private double peakDbtp() {
        return readings.truePeak().truePeakDbtp();
    }

    private void add(Move.Control control, double changeDb, Statement why, Fault fault) {
        if (Math.abs(changeDb) >= SMALLEST_MOVE_DB) {
            moves.add(Move.gain(moves.size() + 1, control, changeDb, why, fault));
        }
    }

    private static double wholeDb(double db) {
        return Math.rint(db);
    }
}
