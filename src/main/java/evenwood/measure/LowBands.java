package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.Arrays;
import java.util.List;

/**
 * Power of the lowest bands, which are narrower than the bins of the {@link ShortTimeSpectrum} can tell apart.
 *
 * <p>How: the lowest 64 bins of every spectrum are transformed back and overlap-added (Hann windows at half overlap add
 * up to 1), which is the sound again at 64 samples a hop, about 1.5 kHz, at next to no cost; real band-pass filters run on
 * that. The upper half of those bins is faded out: cut off sharply, a tone at the cut would ring around the frame and
 * show 60 dB down in the bands. Source: our choice; overlap-add resynthesis of Allen and Rabiner 1977.
 * <p>Limits: bands centred at most {@value #HIGHEST_CENTRE_BINS} bins up; what is told with hop k is the power of hop
 * k−1, delayed further by the filter (55 ms in the 50 Hz band).
 */
final class LowBands {
    /** Bands from here on are wide enough for sums of bins to meet class 1 (ThirdOctaveMaskReferenceTest). */
    static final int HIGHEST_CENTRE_BINS = 20;
    private static final int SAMPLES_PER_HOP = 64;

    private static final int FADE_BEGINS_BIN = 32;

    private final BandPassFilter[] filters;
    private final FloatFFT transform = SingleThreadTransform.ofSize(2 * SAMPLES_PER_HOP);
    private final float[] frame = new float[2 * SAMPLES_PER_HOP];
    private final float[] tail = new float[SAMPLES_PER_HOP];
    private final float[] gains = new float[2 * SAMPLES_PER_HOP];
    private final double[] sound = new double[SAMPLES_PER_HOP];

    LowBands(HopGrid grid, List<ThirdOctave> bands) {
        double sampleRateHz = SAMPLES_PER_HOP / grid.hopSeconds();
        filters = bands.stream().map(band -> filter(sampleRateHz, band))
            .toArray(BandPassFilter[]::new);
        double scale = ShortTimeSpectrum.coefficientScale(grid) * frame.length / (2.0 * grid.hopFrames());
        for (int i = 0; i < gains.length; i++) {
            double faded = Math.max(0, (i / 2 - FADE_BEGINS_BIN) / (double) (SAMPLES_PER_HOP - FADE_BEGINS_BIN));
            gains[i] = (float) (scale * (0.5 + 0.5 * Math.cos(Math.PI * faded)));
        }
        gains[1] = 0; // in the long transform its highest bin stands there
    }

    /** As wide for noise as the ideal band: a six-pole filter with its −3 dB points on the edges would read 0.2 dB more. */
    private static BandPassFilter filter(double sampleRateHz, ThirdOctave band) {
        double half = (band.upperHz() - band.lowerHz()) / BandPassFilter.NOISE_WIDTH / 2;
        double middle = Math.hypot(half, band.centreHz());
        return new BandPassFilter(sampleRateHz, middle - half, middle + half);
    }

    /** Hears the next spectrum; after it {@link #power} tells of the hop before. [audio thread] */
    void accept(ShortTimeSpectrum spectrum) {
        float[] coefficients = spectrum.coefficients();
        for (int i = 0; i < frame.length; i++) {
            frame[i] = gains[i] * coefficients[i];
        }
        transform.realInverse(frame, true);
        for (int i = 0; i < SAMPLES_PER_HOP; i++) {
            sound[i] = tail[i] + frame[i];
            tail[i] = frame[SAMPLES_PER_HOP + i];
        }
    }

    /** Mean square of a band; to be asked once for every spectrum, because the filter moves on. [audio thread] */
    double power(int band) {
        return filters[band].sumOfSquares(sound, SAMPLES_PER_HOP) / SAMPLES_PER_HOP;
    }

    void reset() {
        for (BandPassFilter filter : filters) {
            filter.reset();
        }
        Arrays.fill(tail, 0);
    }
}
