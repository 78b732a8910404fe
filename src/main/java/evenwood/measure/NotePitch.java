package evenwood.measure;

import java.util.Arrays;

/**
 * How high a note sounds, from the frames it covers.
 *
 * <p>How: the median of the largest group of frames that agree within half a semitone. Where they are not clear, because
 * others still ring, what came new with the onset decides instead. Source: our choice.
 *
 * @param frequencyHz 0 without a pitch
 * @param clarity     mean over the frames that agree
 * @param alone       clear, and most frames agree
 */
record NotePitch(double frequencyHz, double clarity, boolean alone) {
    private static final NotePitch NONE = new NotePitch(0, 0, false);
    private static final int STEPS = AttackSteps.STEPS_PER_HOP;
    private static final double SAME_NOTE_SEMITONES = 0.5;
    private static final double ALONE_CLARITY = 0.86;
    private static final double ALONE_SHARE = 0.6;

    /** Of the note between two steps. */
    static NotePitch of(HopHistory pitches, long start, long end) {
        NotePitch whole = ofFrames(pitches, start, end);
        long row = start / STEPS + 2;
        if (whole.clarity < ALONE_CLARITY && row >= pitches.firstHop() && row < pitches.endHop()
            && pitches.get(row, NoteMeter.NEW_CLARITY) >= ALONE_CLARITY) {
            return new NotePitch(pitches.get(row, NoteMeter.NEW_PITCH), pitches.get(row, NoteMeter.NEW_CLARITY), true);
        }
        return whole;
    }

    private static NotePitch ofFrames(HopHistory pitches, long start, long end) {
        // Frame h covers hops h−1 and h: the first that lies in the note, or at worst the one that holds its end.
        long first = Math.max(pitches.firstHop(), (start + STEPS - 1) / STEPS + 1);
        long last = Math.min(pitches.endHop() - 1, Math.max(first, end / STEPS - 1));
        double[] numbers = numbers(pitches, first, last);
        int from = fullestGroup(numbers);
        int count = groupSize(numbers, from);
        if (count == 0) {
            return NONE;
        }
        double number = (numbers[from + (count - 1) / 2] + numbers[from + count / 2]) / 2;
        double clarity = meanClarity(pitches, first, last, numbers[from], numbers[from + count - 1]);
        boolean alone = clarity >= ALONE_CLARITY && count >= ALONE_SHARE * (last - first + 1);
        return new NotePitch(NoteName.frequencyHz(number), clarity, alone);
    }

    /** Note numbers of the frames that have a pitch, from low to high. */
    private static double[] numbers(HopHistory pitches, long first, long last) {
        double[] numbers = new double[(int) Math.max(0, last - first + 1)];
        int count = 0;
        for (long hop = first; hop <= last; hop++) {
            double hz = pitches.get(hop, NoteMeter.PITCH);
            if (hz > 0) {
                numbers[count++] = NoteName.number(hz);
            }
        }
        double[] sorted = Arrays.copyOf(numbers, count);
        Arrays.sort(sorted);
        return sorted;
    }

    private static int fullestGroup(double[] sorted) {
        int best = 0;
        for (int from = 1; from < sorted.length; from++) {
            best = groupSize(sorted, from) > groupSize(sorted, best) ? from : best;
        }
        return best;
    }

    private static int groupSize(double[] sorted, int from) {
        int to = from;
        while (to < sorted.length && sorted[to] - sorted[from] <= SAME_NOTE_SEMITONES) {
            to++;
        }
        return to - from;
    }

    private static double meanClarity(HopHistory pitches, long first, long last, double lowest, double highest) {
        double sum = 0;
        int count = 0;
        for (long hop = first; hop <= last; hop++) {
            double hz = pitches.get(hop, NoteMeter.PITCH);
            if (hz > 0 && NoteName.number(hz) >= lowest && NoteName.number(hz) <= highest) {
                sum += pitches.get(hop, NoteMeter.CLARITY);
                count++;
            }
        }
        return sum / count;
    }
}
