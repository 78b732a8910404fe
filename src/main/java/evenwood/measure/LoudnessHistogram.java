package evenwood.measure;

import evenwood.sound.Decibels;

/**
 * Every loudness value of a take that passed the absolute gate, counted in bins of 0.01 LU, however long the take.
 *
 * <p>How: a bin keeps how many values fell into it and the sum of their powers, so a mean over bins is the exact mean
 * over values; only the side of a gate is decided for a whole bin at once. Source of the gates: ITU-R BS.1770-5 Annex 1
 * eq. 3–7, EBU Tech 3342 §3.
 * <p>Limits: −70 LUFS, strictly, to +30 LUFS; the topmost bin also takes what is louder. Against all values kept one
 * by one: LoudnessHistogramTest.
 */
final class LoudnessHistogram {
    private static final double ABSOLUTE_GATE_LUFS = -70;
    private static final int BINS_PER_LU = 100;
    private static final int BINS = 100 * BINS_PER_LU;

    private final long[] counts = new long[BINS];
    private final double[] powers = new double[BINS];
    private int lowestBin = BINS;
    private int highestBin = -1;

    /** Counts one value, if it is above the absolute gate. [audio thread] */
    void add(double power) {
        double aboveGate = LoudnessMeter.lufs(power) - ABSOLUTE_GATE_LUFS;
        if (aboveGate > 0) {
            int bin = (int) Math.min(BINS - 1, aboveGate * BINS_PER_LU);
            counts[bin]++;
            powers[bin] += power;
            lowestBin = Math.min(lowestBin, bin);
            highestBin = Math.max(highestBin, bin);
        }
    }

    boolean isEmpty() {
        return highestBin < 0;
    }

    /** Mean power of what is above the mean of everything less {@code relativeGateLu}; 0 when nothing was counted. */
    double gatedMeanPower(double relativeGateLu) {
        return isEmpty() ? 0 : meanPower(gateBin(relativeGateLu));
    }

    /** Distance between two percentiles of what passed the relative gate; 0 when nothing was counted. */
    double percentileDistanceLu(double relativeGateLu, double lowPercent, double highPercent) {
        if (isEmpty()) {
            return 0;
        }
        int gateBin = gateBin(relativeGateLu);
        long count = 0;
        for (int bin = gateBin; bin <= highestBin; bin++) {
            count += counts[bin];
        }
        return LoudnessMeter.lufs(percentilePower(gateBin, count, highPercent))
            - LoudnessMeter.lufs(percentilePower(gateBin, count, lowPercent));
    }

    void copyFrom(LoudnessHistogram other) {
        System.arraycopy(other.counts, 0, counts, 0, BINS);
        System.arraycopy(other.powers, 0, powers, 0, BINS);
        lowestBin = other.lowestBin;
        highestBin = other.highestBin;
    }

    void reset() {
        java.util.Arrays.fill(counts, 0);
        java.util.Arrays.fill(powers, 0);
        lowestBin = BINS;
        highestBin = -1;
    }

    /** The lowest bin whose mean is above the gate. */
    private int gateBin(double relativeGateLu) {
        double gatePower = meanPower(lowestBin) * Decibels.toPower(-relativeGateLu);
        int bin = lowestBin;
        while (powers[bin] <= gatePower * counts[bin]) {
            bin++;
        }
        return bin;
    }

    private double meanPower(int fromBin) {
        double power = 0;
        long count = 0;
        for (int bin = fromBin; bin <= highestBin; bin++) {
            power += powers[bin];
            count += counts[bin];
        }
        return power / count;
    }

    /** Rank of percentile p among n ascending values: round((n − 1)·p/100 + 1), from 1. Source: EBU Tech 3342 §5. */
    private double percentilePower(int fromBin, long count, double percent) {
        long before = Math.round((count - 1) * percent / 100);
        int bin = fromBin;
        while (before >= counts[bin]) {
            before -= counts[bin++];
        }
        return powers[bin] / counts[bin];
    }
}
