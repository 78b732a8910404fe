package evenwood.measure;

/**
 * Makes the {@link LineSpectrum} of the whole band from the spectra of the hops, for what lies above the low end.
 *
 * <p>How: mean of the kept spectra; Hann window of two hops, so bins of about 12 Hz that share 2.8 % with their
 * neighbours in time. Source: Harris 1978.
 */
final class HighLineSpectrum {
    private static final double LOBE_CELLS = 2;
    private static final double BLOCK_CELLS = 24;
    /** Frames that overlap by half are correlated by (1/6)² in power: two neighbours each. */
    private static final double INDEPENDENT_SHARE = 1 / (1 + 2.0 / 36);

    private HighLineSpectrum() { }

    /** @param mean mean square per bin over {@code frames} hops */
    static LineSpectrum of(double[] mean, double binHz, int frames) {
        var shape = new LineSpectrum.Shape(binHz, binHz, LOBE_CELLS * binHz, BLOCK_CELLS * binHz,
            Math.max(1, frames * INDEPENDENT_SHARE), 2, mean.length - 2);
        double[] density = new double[mean.length];
        for (int k = 0; k < mean.length; k++) {
            density[k] = mean[k] / binHz;
        }
        return new LineSpectrum(shape, density);
    }
}
