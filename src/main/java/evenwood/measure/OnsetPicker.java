package evenwood.measure;

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
    private static final int NEAR_STEPS = 6;
    private static final int WIDE_STEPS = 30;
    private static final int SHORTEST_NOTE_STEPS = 9;

    private final AttackSteps steps;

    OnsetPicker(AttackSteps steps) {
        this.steps = steps;
    }

    /** Steps at which something was struck, at most as many as fit. */
    long[] onsets() {
        long first = steps.firstStep();
        int count = (int) (steps.endStepNumber() - first);
        float[] rise = new float[count];
        double[] before = new double[count + 1];
        for (int i = 0; i < count; i++) {
            rise[i] = steps.riseDb(first + i);
            before[i + 1] = before[i] + rise[i];
        }
        long[] found = new long[count / SHORTEST_NOTE_STEPS + 1];
        int onsets = 0;
        for (int i = 0; i < count; i++) {
            int from = Math.max(0, i - WIDE_STEPS);
            int to = Math.min(count, i + WIDE_STEPS + 1);
            double mean = (before[to] - before[from]) / (to - from);
            if (rise[i] >= mean + CLEAR_RISE_DB && isHighest(rise, i)) {
                int start = start(rise, i);
                if (onsets == 0 || first + start - found[onsets - 1] >= SHORTEST_NOTE_STEPS) {
                    found[onsets++] = first + start;
                }
            }
        }
        return java.util.Arrays.copyOf(found, onsets);
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
