package evenwood.measure;

import java.util.Arrays;

/**
 * What the noise meter keeps of a take: all of the last half of its room, and of everything before, the quietest.
 *
 * <p>Which hops were quiet is only known later, from the {@link ActivityReading}; the quietest stretches are sure to hold
 * them. One slot is {@link #HOPS_PER_SLOT} hops (171 ms): their low-rate sound ({@link LowRateStream}) and their mean
 * power spectrum up to 20 kHz. Room is fixed when made, so that a live take of hours does not grow.
 * <p>Thread: one owner; only the constructor allocates.
 */
final class NoiseMemory {
    static final int HOPS_PER_SLOT = 4;
    static final int LOW_FRAMES_PER_SLOT = HOPS_PER_SLOT * LowRateStream.FRAMES_PER_HOP;
    private static final long FREE = -1;

    private final int bins;
    private final long[] groups;
    private final float[][] low;
    private final float[][] power;
    private final double[] levels;
    private final int[] hopsFilled;
    private final int protectedGroups;
    private int current = -1;
    private long endHop;

    NoiseMemory(int slots, int bins) {
        this.bins = bins;
        groups = new long[slots];
        low = new float[slots][LOW_FRAMES_PER_SLOT];
        power = new float[slots][bins];
        levels = new double[slots];
        hopsFilled = new int[slots];
        protectedGroups = slots / 2;
        Arrays.fill(groups, FREE);
    }

    /** Opens the place of a hop; hops come in order, none left out. */
    void open(long hop) {
        long group = hop / HOPS_PER_SLOT;
        if (current < 0 || groups[current] != group) {
            current = slotToUse(group);
            groups[current] = group;
            levels[current] = 0;
            hopsFilled[current] = 0;
            Arrays.fill(power[current], 0f);
        }
        hopsFilled[current]++;
        endHop = hop + 1;
    }

    float[] lowOfCurrent() {
        return low[current];
    }

    /** Adds the opened hop's spectrum to its slot's mean. */
    void addPower(float[] spectrum) {
        float[] mean = power[current];
        float share = 1f / HOPS_PER_SLOT;
        double sum = 0;
        for (int k = 0; k < bins; k++) {
            mean[k] += share * spectrum[k];
        }
        for (int k = 2; k < bins; k++) {
            sum += spectrum[k];
        }
        levels[current] += share * sum;
    }

    int slotCount() {
        return groups.length;
    }

    int bins() {
        return bins;
    }

    long endHop() {
        return endHop;
    }

    /** The kept, complete slots in the order they were heard. */
    int[] slotsInOrder() {
        long[] keys = new long[groups.length];
        int count = 0;
        for (int s = 0; s < groups.length; s++) {
            if (groups[s] != FREE && hopsFilled[s] == HOPS_PER_SLOT) {
                keys[count++] = groups[s] * groups.length + s;
            }
        }
        Arrays.sort(keys, 0, count);
        int[] order = new int[count];
        for (int i = 0; i < count; i++) {
            order[i] = (int) (keys[i] % groups.length);
        }
        return order;
    }

    long firstHop(int slot) {
        return groups[slot] * HOPS_PER_SLOT;
    }

    float[] low(int slot) {
        return low[slot];
    }

    float[] power(int slot) {
        return power[slot];
    }

    /** Mean square of the slot, without its direct current. */
    double level(int slot) {
        return levels[slot];
    }

    void reset() {
        Arrays.fill(groups, FREE);
        current = -1;
        endHop = 0;
    }

    private int slotToUse(long group) {
        int loudest = -1;
        for (int s = 0; s < groups.length; s++) {
            if (groups[s] == FREE) {
                return s;
            }
            if (groups[s] < group - protectedGroups && (loudest < 0 || levels[s] > levels[loudest])) {
                loudest = s;
            }
        }
        return loudest;
    }
}
