package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;
import evenwood.sound.AudioBlock;

/**
 * Cuts the sound into overlapping frames of two hops and gives the power of each frequency, one frame a hop.
 *
 * <p>In: mono blocks of any size. Out: {@link #power()} to a {@link Listener}, once per completed hop from the second
 * hop on (the frame ending with hop {@code k} covers hops {@code k−1} and {@code k}).
 * <p>How: periodic Hann window, 50 % overlap, one-sided power scaled by the window's noise bandwidth, so that the sum
 * over the bins of a band is that band's mean square for noise ("a full-scale sine sums to 0.5"). Source: Welch 1967;
 * window figures of Harris 1978 (coherent gain 0.5, noise bandwidth 1.5 bins).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class ShortTimeSpectrum {
    /** Hears one spectrum; must copy what it wants to keep. */
    @FunctionalInterface
    public interface Listener {
        void spectrum(long hop, ShortTimeSpectrum spectrum);
    }

    private final HopGrid grid;
    private final int frameFrames;
    private final FloatFFT transform;
    private final float[] window;
    private final float[] ring;
    private final float[] work;
    private final float[] power;
    private final double powerScale;
    private final Listener[] listeners;
    private int filled;
    private long hop;

    public ShortTimeSpectrum(HopGrid grid, Listener... listeners) {
        this.grid = grid;
        this.listeners = listeners.clone();
        frameFrames = 2 * grid.hopFrames();
        transform = SingleThreadTransform.ofSize(frameFrames);
        window = hann(frameFrames);
        ring = new float[frameFrames];
        work = new float[frameFrames];
        power = new float[frameFrames / 2 + 1];
        double sumOfSquares = 0;
        for (float w : window) {
            sumOfSquares += (double) w * w;
        }
        // Parseval: sum |X|² = N·sum x²; dividing by N·sum w² gives the mean square of the unwindowed sound.
        powerScale = 1 / (frameFrames * sumOfSquares);
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        float[] in = block.samples();
        int hopFrames = grid.hopFrames();
        int done = 0;
        while (done < block.frames()) {
            int count = Math.min(block.frames() - done, frameFrames - filled);
            System.arraycopy(in, done, ring, filled, count);
            filled += count;
            done += count;
            if (filled == frameFrames) {
                hop = hop == 0 ? 1 : hop + 1;
                transformFrame();
                for (Listener listener : listeners) {
                    listener.spectrum(hop, this);
                }
                System.arraycopy(ring, hopFrames, ring, 0, hopFrames);
                filled = hopFrames;
            }
        }
    }

    /** Mean square per bin, bin {@code k} at {@link #binHz(int)}; valid until the next {@link #accept}. */
    public float[] power() {
        return power;
    }

    public int bins() {
        return power.length;
    }

    public double binHz(int bin) {
        return bin * (double) grid.sampleRateHz() / frameFrames;
    }

    /** Width of one bin in hertz. */
    public double binWidthHz() {
        return (double) grid.sampleRateHz() / frameFrames;
    }

    public void reset() {
        filled = 0;
        hop = 0;
    }

    private void transformFrame() {
        for (int i = 0; i < frameFrames; i++) {
            work[i] = ring[i] * window[i];
        }
        transform.realForward(work);
        power[0] = (float) (work[0] * (double) work[0] * powerScale);
        power[power.length - 1] = (float) (work[1] * (double) work[1] * powerScale);
        for (int k = 1; k < power.length - 1; k++) {
            float re = work[2 * k];
            float im = work[2 * k + 1];
            power[k] = (float) (2 * powerScale * (re * re + im * im));
        }
    }

    private static float[] hann(int frames) {
        float[] w = new float[frames];
        for (int i = 0; i < frames; i++) {
            w[i] = (float) (0.5 - 0.5 * Math.cos(2 * Math.PI * i / frames));
        }
        return w;
    }
}
