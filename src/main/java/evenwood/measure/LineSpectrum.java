package evenwood.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.distribution.continuous.GammaDistribution;

/**
 * A mean power spectrum made to show lines: mains harmonics and other tones over noise.
 *
 * <p>In: power density per bin, the mean of {@code averages} independent periodograms. Out: the noise density around
 * each bin, the lines that stand out, and the power of both.
 * <p>How: noise density from a low quantile of the neighbourhood, turned into a mean by the gamma distribution that
 * such a mean of periodograms follows; a line is a peak that noise alone would make once in ten million bins. Source:
 * Welch 1967 (averaging); the chance is our choice, an hour of readings without a false line.
 */
final class LineSpectrum {
    private static final double FALSE_PEAK_CHANCE = 1e-7;
    private static final double QUANTILE = 0.4;

    private final Shape shape;
    private final double[] density;
    private final double[] noise;

    /**
     * @param binHz      distance of the bins
     * @param cellHz     one over the length of a periodogram: what can just be told apart without a window
     * @param lobeHz     half width of the window's main lobe
     * @param blockHz    half width of the neighbourhood that noise is taken from
     * @param averages   independent periodograms in the mean
     * @param firstBin   first bin to look at
     * @param lastBin    last bin to look at
     */
    record Shape(double binHz, double cellHz, double lobeHz, double blockHz, double averages, int firstBin, int lastBin) { }

    LineSpectrum(Shape shape, double[] density) {
        this.shape = shape;
        this.density = density;
        noise = roughNoise();
    }

    Shape shape() {
        return shape;
    }

    double topHz() {
        return shape.lastBin * shape.binHz;
    }

    /** Noise density around a frequency, power per hertz. */
    double noiseAt(double hz) {
        return noise[bin(hz)];
    }

    /** Power within {@code halfWidthHz} of a frequency beyond the noise there; negative when there is less. */
    double excessPower(double hz, double halfWidthHz) {
        int from = Math.max(shape.firstBin, (int) Math.ceil((hz - halfWidthHz) / shape.binHz));
        int to = Math.min(shape.lastBin, (int) Math.floor((hz + halfWidthHz) / shape.binHz));
        double sum = 0;
        for (int k = from; k <= to; k++) {
            sum += density[k] - noise[k];
        }
        return sum * shape.binHz;
    }

    /** Standard error of {@link #excessPower} where there is nothing but noise. */
    double excessError(double hz, double halfWidthHz) {
        double cells = Math.max(1, halfWidthHz / shape.cellHz);
        return noiseAt(hz) * 2 * halfWidthHz / Math.sqrt(cells * shape.averages);
    }

    /** Power of the noise alone between two frequencies. */
    double noisePower(double fromHz, double toHz) {
        double sum = 0;
        for (int k = shape.firstBin; k <= shape.lastBin; k++) {
            double low = Math.max(fromHz, (k - 0.5) * shape.binHz);
            double high = Math.min(toHz, (k + 0.5) * shape.binHz);
            sum += noise[k] * Math.max(0, high - low);
        }
        return sum;
    }

    /** Everything that stands out, from low to high. */
    List<SpectralLine> lines() {
        double threshold = gammaQuantile(1 - FALSE_PEAK_CHANCE);
        int reach = Math.max(1, (int) Math.round(0.5 * shape.lobeHz / shape.binHz));
        List<SpectralLine> lines = new ArrayList<>();
        for (int k = shape.firstBin + 1; k < shape.lastBin; k++) {
            if (density[k] > threshold * noise[k] && density[k] > 0 && highestWithin(k, reach)) {
                lines.add(line(k));
            }
        }
        return lines;
    }

    /** A row of marks, one a bin, to hand to {@link #refineNoise}. */
    boolean[] noMarks() {
        return new boolean[noise.length];
    }

    void mark(boolean[] marks, double hz, double halfWidthHz) {
        int from = Math.max(0, (int) Math.floor((hz - halfWidthHz) / shape.binHz));
        int to = Math.min(marks.length - 1, (int) Math.ceil((hz + halfWidthHz) / shape.binHz));
        for (int k = from; k <= to; k++) {
            marks[k] = true;
        }
    }

    /** Makes the noise the mean of what lies around, outside the marked bins; where nearly all are marked, a straight line. */
    void refineNoise(boolean[] marked) {
        double[] sums = new double[noise.length + 1];
        int[] counts = new int[noise.length + 1];
        for (int k = shape.firstBin; k <= shape.lastBin; k++) {
            sums[k + 1] = sums[k] + (marked[k] ? 0 : density[k]);
            counts[k + 1] = counts[k] + (marked[k] ? 0 : 1);
        }
        int reach = blockBins();
        int known = -1;
        for (int k = shape.firstBin; k <= shape.lastBin; k++) {
            int from = Math.max(shape.firstBin, k - reach);
            int to = Math.min(shape.lastBin, k + reach) + 1;
            int count = counts[to] - counts[from];
            if (count >= Math.max(2, reach / 4)) {
                noise[k] = Math.max(0, (sums[to] - sums[from]) / count);
                bridge(known, k);
                known = k;
            }
        }
    }

    /** Draws the noise straight between two bins where it is known. */
    private void bridge(int from, int to) {
        for (int k = from + 1; from >= 0 && k < to; k++) {
            noise[k] = noise[from] + (noise[to] - noise[from]) * (k - from) / (to - from);
        }
    }

    private int bin(double hz) {
        return Math.max(shape.firstBin, Math.min(shape.lastBin, (int) Math.round(hz / shape.binHz)));
    }

    private SpectralLine line(int k) {
        double left = Math.log(Math.max(Double.MIN_NORMAL, density[k - 1]));
        double centre = Math.log(density[k]);
        double right = Math.log(Math.max(Double.MIN_NORMAL, density[k + 1]));
        double curve = left - 2 * centre + right;
        double shift = curve < 0 ? Math.max(-0.5, Math.min(0.5, 0.5 * (left - right) / curve)) : 0;
        double hz = (k + shift) * shape.binHz;
        double over = noise[k] > 0 ? density[k] / noise[k] : Double.MAX_VALUE;
        return new SpectralLine(hz, sigmaHz(over), Math.max(0, excessPower(hz, shape.lobeHz)), over);
    }

    /** Error of a peak's place: noise (a little over the bound for one sinusoid) and what the parabola leaves. */
    private double sigmaHz(double overNoise) {
        return (0.6 / Math.sqrt(overNoise * shape.averages) + 0.003) * shape.cellHz;
    }

    private boolean highestWithin(int k, int reach) {
        for (int j = Math.max(shape.firstBin, k - reach); j <= Math.min(shape.lastBin, k + reach); j++) {
            if (density[j] > density[k] || density[j] == density[k] && j < k) {
                return false;
            }
        }
        return true;
    }

    private int blockBins() {
        return Math.max(4, (int) Math.round(shape.blockHz / shape.binHz));
    }

    private double[] roughNoise() {
        double factor = 1 / gammaQuantile(QUANTILE);
        double[] result = new double[density.length];
        int half = blockBins();
        double[] block = new double[2 * half + 1];
        double before = 0;
        int beforeBin = shape.firstBin;
        for (int centre = shape.firstBin; ; centre = Math.min(shape.lastBin, centre + half)) {
            int from = Math.max(shape.firstBin, centre - half);
            int to = Math.min(shape.lastBin, centre + half);
            System.arraycopy(density, from, block, 0, to - from + 1);
            Arrays.sort(block, 0, to - from + 1);
            double here = factor * block[(int) (QUANTILE * (to - from))];
            for (int k = beforeBin; k <= centre; k++) {
                double share = centre == beforeBin ? 1 : (double) (k - beforeBin) / (centre - beforeBin);
                result[k] = before + share * (here - before);
            }
            before = here;
            beforeBin = centre;
            if (centre == shape.lastBin) {
                return result;
            }
        }
    }

    private double gammaQuantile(double chance) {
        return new GammaDistribution(shape.averages, 1 / shape.averages).inverseCumulativeProbability(chance);
    }
}
