package evenwood.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * Where notes begin, from the rises of {@link AttackSteps}.
 *
 * <p>Out: steps, in order. How: a step counts when its rise is the highest within 32 ms and stands
 * {@value #CLEAR_RISE_DB} dB above the mean of its surroundings (160 ms to both sides); the start is put where the rise
 * first passes half its height. Two starts are 48 ms apart at least. Source: peak picking after Böck, Krebs and Schedl
 * (ISMIR 2012), looking to both sides because the decision may wait; the figures are our choice. Tried and left out: half
 * the rise where the sound sank by 3 dB before it and came back, to find bows that turn; the swell of a vibrato did it too.
 */
final class OnsetPicker {
    static final double CLEAR_RISE_DB = 10;
    /** Where the steps fall moves the rise of one and the same stroke by 5 dB and more among ringing strings. */
    private static final double CERTAIN_DB = 30;
    private static final int NEAR_STEPS = 6;
    private static final int WIDE_STEPS = 30;
    private static final int SHORTEST_NOTE_STEPS = 9;

    private final AttackSteps steps;

    OnsetPicker(AttackSteps steps) {
        this.steps = steps;
    }

    /** Where something was struck, in order. */
    List<Onset> onsets() {
        long first = steps.firstStep();
        int count = (int) (steps.endStepNumber() - first);
        float[] rise = new float[count];
        double[] before = new double[count + 1];
        for (int i = 0; i < count; i++) {
            rise[i] = steps.riseDb(first + i);
            before[i + 1] = before[i] + rise[i];
        }
        List<Onset> onsets = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int from = Math.max(0, i - WIDE_STEPS);
            int to = Math.min(count, i + WIDE_STEPS + 1);
            double mean = (before[to] - before[from]) / (to - from);
            if (rise[i] >= mean + CLEAR_RISE_DB && isHighest(rise, i)) {
                long start = first + start(rise, i);
                if (onsets.isEmpty() || start - onsets.get(onsets.size() - 1).step() >= SHORTEST_NOTE_STEPS) {
                    onsets.add(new Onset(start, clearness(rise[i] - mean - CLEAR_RISE_DB)));
                }
            }
        }
        return onsets;
    }

    /** A step that is smooth at both its ends. */
    private static double clearness(double overDb) {
        double part = Math.min(1, overDb / CERTAIN_DB);
        return part * part * (3 - 2 * part);
    }

    private static boolean isHighest(float[] rise, int at) {
        for (int i = Math.max(0, at - NEAR_STEPS); i <= Math.min(rise.length - 1, at + NEAR_STEPS); i++) {
            if (rise[i] > rise[at] || rise[i] == rise[at] && i < at) {
                return false;
            }
        }
        return true;
    }

    private static int start(float[] rise, int at) {
        int start = at;
        while (start > 0 && at - start < NEAR_STEPS && rise[start - 1] >= rise[at] / 2) {
            start--;
        }
        return start;
    }
}
