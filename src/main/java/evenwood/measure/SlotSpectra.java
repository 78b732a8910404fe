package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.function.IntPredicate;
import java.util.function.ToDoubleFunction;
import org.hipparchus.distribution.continuous.GammaDistribution;

/**
 * The kept spectra from 0 to 20 kHz, slot by slot (171 ms), in bins of about 12 Hz, mean square a bin.
 *
 * <p>How: besides the mean, for each bin the level that so many of the slots stay under, which neither clicks nor a line
 * that wanders past nor notes that come and go can lift. Of steady noise such a quantile is a known share of the mean,
 * by the gamma distribution that means of periodograms follow. Source: minimum statistics after Martin 2001; Harris 1978
 * for the Hann window (frames that overlap by half share 2.8 % of their power).
 */
final class SlotSpectra {
    private static final double LOWEST_HZ = 20;
    private static final double HIGHEST_HZ = 20_000;
    private static final double LOBE_BINS = 2;
    private static final double BLOCK_BINS = 24;
    private static final double INDEPENDENT_SHARE = 1 / (1 + 2.0 / 36);
    private static final double SLOT_AVERAGES = NoiseMemory.HOPS_PER_SLOT * INDEPENDENT_SHARE;
    private static final int MOST_CHOSEN = 48;

    private final NoiseMemory memory;
    private final int[] slots;
    private final int count;
    private final double binHz;
    private final double topHz;

    SlotSpectra(NoiseMemory memory, HopGrid grid, IntPredicate wanted) {
        this.memory = memory;
        int[] wantedSlots = new int[memory.slotCount()];
        int found = 0;
        for (int slot : memory.slotsInOrder()) {
            if (wanted.test(slot)) {
                wantedSlots[found++] = slot;
            }
        }
        slots = wantedSlots;
        count = found;
        binHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        topHz = Math.min(HIGHEST_HZ, grid.sampleRateHz() / 2.0);
    }

    double binHz() {
        return binHz;
    }

    double topHz() {
        return topHz;
    }

    /** How many are looked at one by one: an evenly spread choice. */
    int chosen() {
        return Math.min(MOST_CHOSEN, count);
    }

    float[] power(int chosen) {
        return memory.power(slots[(int) ((long) chosen * count / chosen())]);
    }

    /** The least of what is looked for in any of the slots but those of digital silence; infinite when there are none. */
    double leastPower(ToDoubleFunction<float[]> wanted) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            double power = wanted.applyAsDouble(memory.power(slots[i]));
            least = power > 0 ? Math.min(least, power) : least;
        }
        return least;
    }

    double[] mean() {
        double[] mean = new double[memory.bins()];
        for (int i = 0; i < count; i++) {
            float[] power = memory.power(slots[i]);
            for (int k = 0; k < mean.length; k++) {
                mean[k] += power[k];
            }
        }
        for (int k = 0; k < mean.length; k++) {
            mean[k] /= Math.max(1, count);
        }
        return mean;
    }

    /** The level that this share of the slots stays under, bin by bin. */
    double[] quantile(double share) {
        int n = chosen();
        double[] result = new double[memory.bins()];
        float[][] power = new float[n][];
        for (int i = 0; i < n; i++) {
            power[i] = power(i);
        }
        float[] ofBin = new float[n];
        for (int k = 0; k < result.length && n > 0; k++) {
            for (int i = 0; i < n; i++) {
                ofBin[i] = power[i][k];
            }
            Arrays.sort(ofBin);
            result[k] = ofBin[(int) (share * n)];
        }
        return result;
    }

    /** What the quantile of steady noise is multiplied by to give its mean. */
    static double quantileToMean(double share) {
        return 1 / new GammaDistribution(SLOT_AVERAGES, 1 / SLOT_AVERAGES).inverseCumulativeProbability(share);
    }

    /** As a line spectrum. @param efficiency how much of what the slots know is in it: 1 for their mean */
    LineSpectrum lineSpectrum(double[] power, double efficiency) {
        double averages = Math.max(1, efficiency * count * SLOT_AVERAGES);
        var shape = new LineSpectrum.Shape(binHz, binHz, LOBE_BINS * binHz, BLOCK_BINS * binHz, averages, 2, power.length - 2);
        double[] density = new double[power.length];
        for (int k = 0; k < power.length; k++) {
            density[k] = power[k] / binHz;
        }
        return new LineSpectrum(shape, density);
    }

    /** Level from 20 Hz to 20 kHz or half the sample rate. */
    double levelDbfs(double[] power, Weighting weighting) {
        double sum = 0;
        for (int k = 1; k < power.length; k++) {
            double low = Math.max(LOWEST_HZ, (k - 0.5) * binHz);
            double high = Math.min(topHz, (k + 0.5) * binHz);
            sum += power[k] * weighting.powerGain(k * binHz) * Math.max(0, high - low) / binHz;
        }
        return Decibels.ofPower(sum);
    }
}
