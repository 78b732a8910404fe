package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.Arrays;

/**
 * Makes the fine {@link LineSpectrum} of the low end, up to about 2.2 kHz, from pieces of low-rate sound.
 *
 * <p>How: four-term Blackman-Harris window (side lobes −92 dB), zero padding to 16 384 frames, mean over the pieces.
 * Source: Harris 1978 (window), Welch 1967 (averaging; pieces that overlap by half are as good as independent: 3.8 %).
 */
final class LowLineSpectrum {
    private static final int TRANSFORM = 16_384;
    /** Half width of the window's main lobe, in cycles over the piece's length. */
    private static final double LOBE_CELLS = 4;
    private static final double LOWEST_HZ = 15;
    private static final double LEAST_BLOCK_HZ = 20;
    private static final double LEAST_BLOCK_CELLS = 16;

    private LowLineSpectrum() { }

    static LineSpectrum of(LowStretches stretches, double rateHz, double topHz) {
        int frames = stretches.pieceFrames();
        double cellHz = rateHz / frames;
        double binHz = rateHz / TRANSFORM;
        var shape = new LineSpectrum.Shape(binHz, cellHz, LOBE_CELLS * cellHz,
            Math.max(LEAST_BLOCK_HZ, LEAST_BLOCK_CELLS * cellHz), stretches.pieces(),
            (int) Math.ceil(LOWEST_HZ / binHz), (int) (topHz / binHz));
        return new LineSpectrum(shape, density(stretches, rateHz));
    }

    private static double[] density(LowStretches stretches, double rateHz) {
        int frames = stretches.pieceFrames();
        float[] window = SpectrumWindow.BLACKMAN_HARRIS.ofSize(frames);
        double energy = frames * SpectrumWindow.BLACKMAN_HARRIS.meanSquare();
        double scale = 2 / (rateHz * energy * stretches.pieces());
        FloatFFT transform = SingleThreadTransform.ofSize(TRANSFORM);
        float[] work = new float[TRANSFORM];
        double[] density = new double[TRANSFORM / 2];
        for (int p = 0; p < stretches.pieces(); p++) {
            Arrays.fill(work, 0f);
            stretches.copyPiece(p, work);
            for (int i = 0; i < frames; i++) {
                work[i] *= window[i];
            }
            transform.realForward(work);
            for (int k = 1; k < density.length; k++) {
                double re = work[2 * k];
                double im = work[2 * k + 1];
                density[k] += scale * (re * re + im * im);
            }
        }
        return density;
    }
}
