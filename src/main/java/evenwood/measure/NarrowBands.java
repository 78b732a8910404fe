package evenwood.measure;

import java.util.Arrays;

/**
 * The frequency axis cut so finely that the partials of a note stand apart: single bins at the bottom, 24 bands an octave
 * above.
 *
 * <p>Source: our choice; a semitone is two bands, and a partial under a Hann window is four bins wide.
 */
final class NarrowBands {
    private static final int BANDS_PER_OCTAVE = 24;
    private static final double LOWEST_HZ = 30;
    private static final double HIGHEST_HZ = 20_000;

    private final int[] firstBins;
    private final double[] centresHz;

    NarrowBands(HopGrid grid) {
        double binWidthHz = grid.sampleRateHz() / (2.0 * grid.hopFrames());
        firstBins = firstBins(Math.max(1, (int) Math.round(LOWEST_HZ / binWidthHz)),
            (int) Math.min(grid.hopFrames(), HIGHEST_HZ / binWidthHz));
        centresHz = new double[firstBins.length - 1];
        for (int band = 0; band < centresHz.length; band++) {
            centresHz[band] = (firstBins[band] + firstBins[band + 1] - 1) / 2.0 * binWidthHz;
        }
    }

    int count() {
        return centresHz.length;
    }

    double centreHz(int band) {
        return centresHz[band];
    }

    /** The first band with its centre at or above a frequency; {@link #count()} when there is none. */
    int firstFrom(double hz) {
        int place = Arrays.binarySearch(centresHz, hz);
        return place >= 0 ? place : -place - 1;
    }

    /** Mean square in a band. */
    float power(int band, float[] binPowers) {
        float sum = 0;
        for (int bin = firstBins[band]; bin < firstBins[band + 1]; bin++) {
            sum += binPowers[bin];
        }
        return sum;
    }

    /** Where each band begins, and last where the highest ends. */
    private static int[] firstBins(int first, int end) {
        int[] edges = new int[end - first + 2];
        int count = 0;
        double step = Math.pow(2, 1.0 / BANDS_PER_OCTAVE);
        for (int bin = first; bin < end; bin = Math.max(bin + 1, (int) Math.round(bin * step))) {
            edges[count++] = bin;
        }
        edges[count++] = end;
        return Arrays.copyOf(edges, count);
    }
}
