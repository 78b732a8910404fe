package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;
import evenwood.sound.AudioBlock;

/**
 * Cuts the sound into overlapping frames of two hops and gives the power of each frequency, one frame a hop.
 *
 * <p>In: mono blocks of any size. Out: {@link #power()} to each {@link Listener}, once per completed hop from the second
 * hop on (the frame told with hop {@code k} covers hops {@code k−1} and {@code k}).
 * <p>How: periodic Hann window, 50 % overlap, one-sided power scaled by the window's mean square, so that the sum over
 * the bins of a band is that band's mean square ("a full-scale sine sums to 0.5"). The scale sits in the window, so a
 * bin costs two multiplications. Source: Welch 1967; window figures of Harris 1978 (coherent gain 0.5, noise bandwidth
 * 1.5 bins).
 * <p>Limits: single precision, parts 140 dB under the loudest are lost (ShortTimeSpectrumTest).
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
public final class ShortTimeSpectrum {
    /** Hears one spectrum; must copy what it wants to keep. */
    @FunctionalInterface
    public interface Listener {
        void spectrum(long hop, ShortTimeSpectrum spectrum);
    }

    private final HopGrid grid;
    private final int hopFrames;
    private final int frameFrames;
    private final FloatFFT transform;
    private final float[] window;
    private final float[] ring;
    private final float[] work;
    private final float[] power;
    private final Listener[] listeners;
    private int filled;
    private long hop;

    public ShortTimeSpectrum(HopGrid grid, Listener... listeners) {
        this.grid = grid;
        this.listeners = listeners.clone();
        hopFrames = grid.hopFrames();
        frameFrames = 2 * hopFrames;
        transform = SingleThreadTransform.ofSize(frameFrames);
        window = SpectrumWindow.HANN.ofSize(frameFrames);
        ring = new float[frameFrames];
        work = new float[frameFrames];
        power = new float[frameFrames / 2 + 1];
        // Parseval: sum |X|² = N·sum x²; over N²·mean(w²) it is the mean square of the unwindowed sound, and the
        // negative frequencies double all bins but the first and the last.
        float scale = (float) (1 / coefficientScale(grid));
        for (int i = 0; i < frameFrames; i++) {
            window[i] *= scale;
        }
    }

    /** Hears one block and keeps none of it. [audio thread] */
    public void accept(AudioBlock block) {
        float[] in = block.samples();
        int frames = block.frames();
        int done = 0;
        while (done < frames) {
            int count = Math.min(frames - done, frameFrames - filled);
            System.arraycopy(in, done, ring, filled, count);
            filled += count;
            done += count;
            if (filled == frameFrames) {
                hop++;
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

    /**
     * The transform itself, real and imaginary part of bin k at 2k and 2k+1 (bin 0 and the last bin share the first
     * pair); times {@link #coefficientScale} it is that of the Hann-windowed sound. Valid until the next accept.
     */
    float[] coefficients() {
        return work;
    }

    /** The sound the spectrum was taken of, two hops, not windowed. Valid until the next accept. */
    float[] samples() {
        return ring;
    }

    static double coefficientScale(HopGrid grid) {
        return 2 * grid.hopFrames() / Math.sqrt(2 / SpectrumWindow.HANN.meanSquare());
    }

    public HopGrid grid() {
        return grid;
    }

    /** The two hops of sound the newest {@link #power()} was taken of, unwindowed; valid until the next {@link #accept}. */
    public float[] frame() {
        return ring;
    }

    public int bins() {
        return power.length;
    }

    public double binHz(int bin) {
        return bin * binWidthHz();
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
        for (int i = 0; i < work.length; i++) {
            work[i] = ring[i] * window[i];
        }
        transform.realForward(work);
        int last = power.length - 1;
        power[0] = work[0] * work[0] / 2;
        power[last] = work[1] * work[1] / 2;
        for (int k = 1; k < last; k++) {
            float re = work[2 * k];
            float im = work[2 * k + 1];
            power[k] = re * re + im * im;
        }
    }
}
