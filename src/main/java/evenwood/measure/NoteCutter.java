package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Cuts the playing into notes.
 *
 * <p>How: a note begins at an onset that falls into playing, at the start of playing without one (a bow that swells), or
 * where a steady pitch gives way to another (a slur). It ends with the next one or with the playing. Its pitch is the
 * median of the largest group of frames that agree within half a semitone. Source: our choice.
 */
final class NoteCutter {
    private static final int STEPS = AttackSteps.STEPS_PER_HOP;
    private static final int LEVEL_FROM_STEPS = 15;
    private static final int LEVEL_TO_STEPS = 75;
    private static final int SHORTEST_STEPS = 9;
    private static final double SAME_NOTE_SEMITONES = 0.5;
    private static final double OTHER_NOTE_SEMITONES = 0.7;
    private static final double CLEAR = 0.8;
    private static final double ALONE_CLARITY = 0.86;
    private static final double NEW_CLEAR = 0.86;
    private static final double ALONE_SHARE = 0.6;
    private static final int SWELL_HOPS = 3;
    private static final int SLUR_BACK_STEPS = 12;

    private final HopGrid grid;
    private final AttackSteps steps;
    private final HopHistory pitches;
    private final ActivityReading activity;

    NoteCutter(HopGrid grid, AttackSteps steps, HopHistory pitches, ActivityReading activity) {
        this.grid = grid;
        this.steps = steps;
        this.pitches = pitches;
        this.activity = activity;
    }

    List<Note> notes(long[] onsets) {
        List<Note> notes = new ArrayList<>();
        long[] starts = starts(onsets);
        for (int i = 0; i < starts.length; i++) {
            long end = endOfPlaying(starts[i], i + 1 < starts.length ? starts[i + 1] : steps.endStepNumber());
            if (end - starts[i] >= SHORTEST_STEPS) {
                notes.add(note(starts[i], end));
            }
        }
        return notes;
    }

    private long[] starts(long[] onsets) {
        List<Long> starts = new ArrayList<>();
        for (long onset : onsets) {
            long hop = onset / STEPS;
            if (activity.isPlaying(hop) || activity.isPlaying(hop + 1)) {
                starts.add(onset);
            }
        }
        addSwells(starts);
        addSlurs(starts);
        return starts.stream().mapToLong(Long::longValue).sorted().toArray();
    }

    private void addSwells(List<Long> starts) {
        long[] struck = starts.stream().mapToLong(Long::longValue).toArray();
        for (long hop = activity.firstHop(); hop < activity.firstHop() + activity.states().length; hop++) {
            boolean begins = activity.isPlaying(hop) && !activity.isPlaying(hop - 1) && !activity.isPlaying(hop - 2)
                && activity.isPlaying(hop + 1) && activity.isPlaying(hop + 2);
            if (begins && hop * STEPS >= steps.firstStep() && noneNear(struck, hop * STEPS, SWELL_HOPS * STEPS)) {
                starts.add(hop * STEPS);
            }
        }
    }

    private void addSlurs(List<Long> starts) {
        long[] known = starts.stream().mapToLong(Long::longValue).sorted().toArray();
        long last = Long.MIN_VALUE / 2;
        for (long hop = pitches.firstHop() + 2; hop + 2 < pitches.endHop(); hop++) {
            double before = steadyNumber(hop - 2, hop - 1);
            double after = steadyNumber(hop + 1, hop + 2);
            if (before > 0 && after > 0 && Math.abs(after - before) > OTHER_NOTE_SEMITONES && activity.isPlaying(hop) && hop - last > 2) {
                last = hop;
                if (noneNear(known, hop * STEPS, 2 * STEPS)) {
                    starts.add(steepest(hop * STEPS - SLUR_BACK_STEPS, hop * STEPS + STEPS));
                }
            }
        }
    }

    private long steepest(long from, long to) {
        long best = (from + to) / 2;
        for (long at = from; at < to; at++) {
            best = steps.riseDb(at) > steps.riseDb(best) ? at : best;
        }
        return best;
    }

    private static boolean noneNear(long[] sorted, long at, long distance) {
        int place = Arrays.binarySearch(sorted, at);
        if (place >= 0) {
            return false;
        }
        int next = -place - 1;
        return (next == sorted.length || sorted[next] - at > distance) && (next == 0 || at - sorted[next - 1] > distance);
    }

    /** The pitch number two frames agree on, 0 when they do not or are not clear. */
    private double steadyNumber(long hop, long other) {
        double first = number(hop);
        double second = number(other);
        return first > 0 && second > 0 && Math.abs(first - second) < SAME_NOTE_SEMITONES ? (first + second) / 2 : 0;
    }

    private double number(long hop) {
        return pitches.get(hop, NoteMeter.CLARITY) >= CLEAR ? NoteName.number(pitches.get(hop, NoteMeter.PITCH)) : 0;
    }

    private long endOfPlaying(long start, long latest) {
        long hop = start / STEPS + 2;
        while (hop * STEPS < latest && (activity.isPlaying(hop) || activity.isPlaying(hop + 1))) {
            hop++;
        }
        return Math.min(latest, hop * STEPS);
    }

    private Note note(long start, long end) {
        double peak = 0;
        for (long at = Math.max(start - 1, steps.firstStep()); at < end; at++) {
            peak = Math.max(peak, steps.peak(at));
        }
        double[] pitch = pitch(start, end);
        long row = start / STEPS + 2;
        if (pitch[1] < ALONE_CLARITY && row < pitches.endHop() && row >= pitches.firstHop() && pitches.get(row, NoteMeter.NEW_CLARITY) > NEW_CLEAR) {
            pitch = new double[] {pitches.get(row, NoteMeter.NEW_PITCH), pitches.get(row, NoteMeter.NEW_CLARITY), 1};
        }
        double stepSeconds = grid.hopSeconds() / STEPS;
        return new Note(start * stepSeconds, end * stepSeconds, pitch[0], NoteName.nearest(pitch[0]), pitch[1],
            pitch[1] < ALONE_CLARITY || pitch[2] < ALONE_SHARE, 20 * Math.log10(peak), levelDbfs(start, end));
    }

    private double levelDbfs(long start, long end) {
        long to = Math.min(end, start + LEVEL_TO_STEPS);
        long from = Math.min(start + LEVEL_FROM_STEPS, (start + to) / 2);
        double sum = 0;
        for (long at = from; at < to; at++) {
            sum += steps.meanSquare(at);
        }
        return 10 * Math.log10(sum / (to - from));
    }

    /** Frequency, clarity, and the share of frames that agree on it. */
    private double[] pitch(long start, long end) {
        // Frame h covers hops h−1 and h: the first that lies in the note, or at worst the one that holds its end.
        long first = Math.max(pitches.firstHop(), (start + STEPS - 1) / STEPS + 1);
        long last = Math.min(pitches.endHop() - 1, Math.max(first, end / STEPS - 1));
        int count = (int) Math.max(0, last - first + 1);
        double[] numbers = new double[count];
        int pitched = 0;
        for (long hop = first; hop <= last; hop++) {
            double hz = pitches.get(hop, NoteMeter.PITCH);
            if (hz > 0) {
                numbers[pitched++] = NoteName.number(hz);
            }
        }
        if (pitched == 0) {
            return new double[] {0, 0, 0};
        }
        double[] sorted = Arrays.copyOf(numbers, pitched);
        Arrays.sort(sorted);
        int bestFrom = 0;
        int bestCount = 0;
        for (int from = 0; from < pitched; from++) {
            int to = from;
            while (to < pitched && sorted[to] - sorted[from] <= SAME_NOTE_SEMITONES) {
                to++;
            }
            if (to - from > bestCount) {
                bestFrom = from;
                bestCount = to - from;
            }
        }
        double number = (sorted[bestFrom + (bestCount - 1) / 2] + sorted[bestFrom + bestCount / 2]) / 2;
        double clarity = 0;
        for (long hop = first; hop <= last; hop++) {
            double hz = pitches.get(hop, NoteMeter.PITCH);
            if (hz > 0 && Math.abs(NoteName.number(hz) - number) <= SAME_NOTE_SEMITONES) {
                clarity += pitches.get(hop, NoteMeter.CLARITY);
            }
        }
        return new double[] {NoteName.frequencyHz(number), Math.min(1, clarity / bestCount), (double) bestCount / count};
    }
}
