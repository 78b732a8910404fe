package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;

/**
 * Complex spectra of overlapping pieces of the low-rate sound, to follow the phase of a line from piece to piece.
 *
 * <p>How: Blackman-Harris window; a line's amplitude and phase in the middle of a piece are read from the nearest bin,
 * whose answer to a line off its middle is the window's transform, known exactly. Source: Harris 1978.
 */
final class PieceSpectra {
    /** Of the window counted from its middle, where all its cosines have the same sign. */
    private static final double[] COSINES = {0.35875, 0.48829, 0.14128, 0.01168};

    private final int pieces;
    private final int frames;
    private final double binHz;
    private final double[] centreSeconds;
    private final float[][] spectra;

    /** @param topHz highest frequency wanted */
    PieceSpectra(LowStretches stretches, double rateHz, double topHz) {
        frames = stretches.pieceFrames();
        pieces = Integer.bitCount(frames) == 1 ? stretches.pieces() : 0;
        binHz = rateHz / frames;
        centreSeconds = new double[pieces];
        spectra = new float[pieces][2 * ((int) (topHz / binHz) + 3)];
        if (pieces == 0) {
            return;
        }
        float[] window = SpectrumWindow.BLACKMAN_HARRIS.ofSize(frames);
        FloatFFT transform = SingleThreadTransform.ofSize(frames);
        float[] work = new float[frames];
        for (int p = 0; p < pieces; p++) {
            centreSeconds[p] = (stretches.pieceStart(p) * LowRateStream.FRAMES_PER_HOP + frames / 2.0) / rateHz;
            stretches.copyPiece(p, work);
            for (int i = 0; i < frames; i++) {
                work[i] *= window[i];
            }
            transform.realForward(work);
            System.arraycopy(work, 0, spectra[p], 0, Math.min(work.length, spectra[p].length));
        }
    }

    int pieces() {
        return pieces;
    }

    double binHz() {
        return binHz;
    }

    double centreSeconds(int piece) {
        return centreSeconds[piece];
    }

    /** Mean square density around a bin, as a line of mean square 1 at its middle would read 1. */
    double power(int piece, int bin) {
        double re = spectra[piece][2 * bin];
        double im = spectra[piece][2 * bin + 1];
        double scale = 2 / (frames * COSINES[0]);
        return (re * re + im * im) * scale * scale / 2;
    }

    /** Amplitude of a line at this frequency as a phasor at the middle of the piece. */
    void phasor(int piece, double hz, double[] realAndImaginary) {
        int bin = (int) Math.round(hz / binHz);
        double gain = 2 / (frames * answer(hz / binHz - bin)) * (bin % 2 == 0 ? 1 : -1);
        realAndImaginary[0] = spectra[piece][2 * bin] * gain;
        realAndImaginary[1] = spectra[piece][2 * bin + 1] * gain;
    }

    /** The window's transform {@code offset} bins from its middle, over the number of frames: a sum of shifted sincs. */
    private static double answer(double offset) {
        double sum = COSINES[0] * sinc(offset);
        for (int m = 1; m < COSINES.length; m++) {
            sum += COSINES[m] / 2 * (sinc(offset - m) + sinc(offset + m));
        }
        return sum;
    }

    private static double sinc(double x) {
        return Math.abs(x) < 1e-9 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    }
}
