package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.function.IntPredicate;
import org.hipparchus.distribution.continuous.GammaDistribution;

/**
 * The spectrum of the noise from 0 to 20 kHz in bins of about 12 Hz, mean square a bin.
 *
 * <p>How: the mean of quiet slots; or, when nobody stopped playing, for each bin the level that the slots hardly ever go
 * under, turned into a mean by the gamma distribution that the slot means of noise follow. Source: minimum statistics
 * after Martin 2001; Harris 1978 for the Hann window (frames that overlap by half share 2.8 % of their power).
 * <p>Limits: what is always there holds what is always played too: an upper bound.
 */
record SlotPower(double[] power, double binHz, double topHz, double averages) {
    private static final double LOWEST_HZ = 20;
    private static final double HIGHEST_HZ = 20_000;
    private static final double LOBE_BINS = 2;
    private static final double BLOCK_BINS = 24;
    private static final double INDEPENDENT_SHARE = 1 / (1 + 2.0 / 36);
    private static final double LOW_SHARE = 0.15;
    private static final int MOST_SLOTS = 96;

    static SlotPower mean(NoiseMemory memory, HopGrid grid, IntPredicate wanted) {
        double[] mean = new double[memory.bins()];
        int slots = 0;
        for (int slot : memory.slotsInOrder()) {
            if (wanted.test(slot)) {
                slots++;
                float[] power = memory.power(slot);
                for (int k = 0; k < mean.length; k++) {
                    mean[k] += power[k];
                }
            }
        }
        for (int k = 0; k < mean.length; k++) {
            mean[k] /= Math.max(1, slots);
        }
        return of(mean, grid, slots);
    }

    static SlotPower alwaysThere(NoiseMemory memory, HopGrid grid) {
        int[] slots = memory.slotsInOrder();
        int count = Math.min(MOST_SLOTS, slots.length);
        double[] low = new double[memory.bins()];
        float[] ofBin = new float[count];
        double shape = NoiseMemory.HOPS_PER_SLOT * INDEPENDENT_SHARE;
        double toMean = 1 / new GammaDistribution(shape, 1 / shape).inverseCumulativeProbability(LOW_SHARE);
        for (int k = 0; k < low.length; k++) {
            for (int i = 0; i < count; i++) {
                ofBin[i] = memory.power(slots[(int) ((long) i * slots.length / count)])[k];
            }
            Arrays.sort(ofBin);
            low[k] = count == 0 ? 0 : toMean * ofBin[(int) (LOW_SHARE * count)];
        }
        return of(low, grid, Math.max(1, count / 4));
    }

    LineSpectrum lineSpectrum() {
        var shape = new LineSpectrum.Shape(binHz, binHz, LOBE_BINS * binHz, BLOCK_BINS * binHz, averages, 2, power.length - 2);
        double[] density = new double[power.length];
        for (int k = 0; k < power.length; k++) {
            density[k] = power[k] / binHz;
        }
        return new LineSpectrum(shape, density);
    }

    double floorDbfs() {
        return Decibels.ofPower(sum(Weighting.Z));
    }

    double floorDbfsA() {
        return Decibels.ofPower(sum(Weighting.A));
    }

    private double sum(Weighting weighting) {
        double sum = 0;
        for (int k = 1; k < power.length; k++) {
            double low = Math.max(LOWEST_HZ, (k - 0.5) * binHz);
            double high = Math.min(topHz, (k + 0.5) * binHz);
            sum += power[k] * weighting.powerGain(k * binHz) * Math.max(0, high - low) / binHz;
        }
        return sum;
    }

    private static SlotPower of(double[] power, HopGrid grid, int slots) {
        double binHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        double averages = Math.max(1, slots * NoiseMemory.HOPS_PER_SLOT * INDEPENDENT_SHARE);
        return new SlotPower(power, binHz, Math.min(HIGHEST_HZ, grid.sampleRateHz() / 2.0), averages);
    }
}
