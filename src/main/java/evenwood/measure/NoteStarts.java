package evenwood.measure;

import java.util.Arrays;
import java.util.stream.LongStream;

/**
 * Where the notes of the playing begin, in steps of {@link AttackSteps}.
 *
 * <p>How: at an onset that falls into playing; at the start of playing without one (a bow that swells); and where a pitch
 * that two frames agree on gives way to another that two frames agree on (a slur). Source: our choice.
 * <p>Limits: a slur is placed within about 45 ms; a repeated bowed note without an attack is not told from a held one.
 */
final class NoteStarts {
    private static final int STEPS = AttackSteps.STEPS_PER_HOP;
    private static final double SAME_NOTE_SEMITONES = 0.5;
    private static final double OTHER_NOTE_SEMITONES = 0.7;
    private static final double CLEAR = 0.8;
    private static final int SWELL_HOPS = 3;
    private static final int SLUR_BACK_STEPS = 12;
    private static final double SLUR_RISE_DB = 3;

    private final AttackSteps steps;
    private final HopHistory pitches;
    private final ActivityReading activity;

    NoteStarts(AttackSteps steps, HopHistory pitches, ActivityReading activity) {
        this.steps = steps;
        this.pitches = pitches;
        this.activity = activity;
    }

    long[] of(long[] onsets) {
        long[] struck = Arrays.stream(onsets)
            .filter(onset -> activity.isPlaying(onset / STEPS) || activity.isPlaying(onset / STEPS + 1)).toArray();
        long[] attacked = LongStream.concat(Arrays.stream(struck), swells(struck)).sorted().toArray();
        return LongStream.concat(Arrays.stream(attacked), slurs(attacked)).sorted().toArray();
    }

    private LongStream swells(long[] known) {
        LongStream.Builder swells = LongStream.builder();
        for (long hop = steps.firstStep() / STEPS; hop < steps.endStepNumber() / STEPS; hop++) {
            boolean begins = activity.isPlaying(hop) && activity.isPlaying(hop + 1) && activity.isPlaying(hop + 2)
                && !activity.isPlaying(hop - 1) && !activity.isPlaying(hop - 2);
            if (begins && noneNear(known, hop * STEPS, SWELL_HOPS * STEPS)) {
                swells.add(hop * STEPS);
            }
        }
        return swells.build();
    }

    private LongStream slurs(long[] known) {
        LongStream.Builder slurs = LongStream.builder();
        long last = pitches.firstHop();
        for (long hop = pitches.firstHop() + 2; hop + 2 < pitches.endHop(); hop++) {
            double change = hop - last > 2 && activity.isPlaying(hop) ? changeAt(hop) : 0;
            if (Math.abs(change) > OTHER_NOTE_SEMITONES) {
                last = hop;
                long from = hop * STEPS - SLUR_BACK_STEPS;
                long steepest = steepest(from, hop * STEPS + STEPS);
                boolean rises = steps.riseDb(steepest) >= SLUR_RISE_DB;
                // A pitch that falls or climbs by whole octaves while nothing rises is the same note read otherwise.
                boolean sameNote = !rises && Math.abs(change - 12 * Math.rint(change / 12)) < SAME_NOTE_SEMITONES;
                if (!sameNote && noneNear(known, hop * STEPS, 2 * STEPS)) {
                    slurs.add(rises ? steepest : from + (SLUR_BACK_STEPS + STEPS) / 2);
                }
            }
        }
        return slurs.build();
    }

    /** By how many semitones the pitch changes about a hop; 0 when it is not clear on both sides. */
    private double changeAt(long hop) {
        double before = agreed(hop - 2, hop - 1);
        double after = agreed(hop + 1, hop + 2);
        return before > 0 && after > 0 ? after - before : 0;
    }

    /** The note number two frames agree on; 0 when they do not, or are not clear. */
    private double agreed(long hop, long other) {
        double first = number(hop);
        double second = number(other);
        return first > 0 && second > 0 && Math.abs(first - second) < SAME_NOTE_SEMITONES ? (first + second) / 2 : 0;
    }

    private double number(long hop) {
        return pitches.get(hop, NoteMeter.CLARITY) >= CLEAR ? NoteName.number(pitches.get(hop, NoteMeter.PITCH)) : 0;
    }

    private long steepest(long from, long to) {
        long best = from;
        for (long at = from; at < to; at++) {
            best = steps.riseDb(at) > steps.riseDb(best) ? at : best;
        }
        return best;
    }

    private static boolean noneNear(long[] sorted, long at, long distance) {
        int place = Arrays.binarySearch(sorted, at);
        int next = place >= 0 ? place : -place - 1;
        return (next == sorted.length || sorted[next] - at > distance) && (next == 0 || at - sorted[next - 1] > distance);
    }
}
