package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;
import java.util.Arrays;

/**
 * A recording of {@link SineSweeps} with the sweeps taken out of it: what is left are the box's answers to single clicks, one
 * for each sweep, each with those of its harmonics ahead of it.
 *
 * <p>How: division of the spectra, Y/X, faded out below 16 Hz and above the sweep's end. Source: Farina 2000 (see
 * {@link SineSweeps}); division in place of his inverse filter, as Müller and Massarani, JAES 49(6) 2001, advise (from memory).
 */
final class SweepEchoes {
    private static final double FADED_BELOW_HZ = 16;
    private static final double NEXT_TO_NOTHING = 1e-9;

    private final float[] echoes;
    private final int sampleRateHz;

    SweepEchoes(float[] recording, int sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
        float[] sweep = SineSweeps.one(sampleRateHz);
        int size = Integer.highestOneBit(Math.max(2, recording.length + sweep.length - 1)) * 2;
        FloatFFT transform = SingleThreadTransform.ofSize(size);
        echoes = Arrays.copyOf(recording, size);
        float[] sent = Arrays.copyOf(sweep, size);
        transform.realForward(echoes);
        transform.realForward(sent);
        divide(echoes, sent);
        transform.realInverse(echoes, true);
    }

    private void divide(float[] heard, float[] sent) {
        int size = heard.length;
        double most = 0;
        for (int bin = 1; bin < size / 2; bin++) {
            most = Math.max(most, (double) sent[2 * bin] * sent[2 * bin] + (double) sent[2 * bin + 1] * sent[2 * bin + 1]);
        }
        for (int bin = 1; bin < size / 2; bin++) {
            double weight = weight((double) bin * sampleRateHz / size);
            double re = sent[2 * bin];
            double im = sent[2 * bin + 1];
            double power = re * re + im * im + NEXT_TO_NOTHING * most;
            double heardRe = heard[2 * bin];
            double heardIm = heard[2 * bin + 1];
            heard[2 * bin] = (float) (weight * (heardRe * re + heardIm * im) / power);
            heard[2 * bin + 1] = (float) (weight * (heardIm * re - heardRe * im) / power);
        }
        heard[0] = 0;
        heard[1] = 0;
    }

    private double weight(double hz) {
        double highest = Math.min(SineSweeps.HIGHEST_HZ, SineSweeps.HIGHEST_SHARE * sampleRateHz);
        double low = (hz - SineSweeps.LOWEST_HZ) / (FADED_BELOW_HZ - SineSweeps.LOWEST_HZ);
        double high = (highest - hz) / (0.03 * highest);
        double part = Math.max(0, Math.min(1, Math.min(low, high)));
        return 0.5 - 0.5 * Math.cos(Math.PI * part);
    }

    /** Where the highest of all stands, in seconds. */
    double highestSeconds() {
        int best = 0;
        for (int i = 1; i < echoes.length; i++) {
            best = Math.abs(echoes[i]) > Math.abs(echoes[best]) ? i : best;
        }
        return (double) best / sampleRateHz;
    }

    /** The highest within so many seconds to either side; nothing outside. */
    double peak(double seconds, double withinSeconds) {
        double highest = 0;
        int to = (int) Math.min(echoes.length - 1, Math.round((seconds + withinSeconds) * sampleRateHz));
        for (int i = (int) Math.max(0, Math.round((seconds - withinSeconds) * sampleRateHz)); i <= to; i++) {
            highest = Math.max(highest, Math.abs(echoes[i]));
        }
        return highest;
    }

    /** The power spectrum of a stretch around a moment. */
    PowerAtFrequency power(double seconds, double beforeSeconds, double afterSeconds) {
        int before = (int) Math.round(beforeSeconds * sampleRateHz);
        int after = (int) Math.round(afterSeconds * sampleRateHz);
        int middle = (int) Math.round(seconds * sampleRateHz);
        float[] stretch = new float[Integer.highestOneBit(2 * (before + after)) * 2];
        for (int i = -before; i < after; i++) {
            double edge = i < 0 ? (double) (i + before) / (0.5 * before) : (double) (after - i) / (0.5 * after);
            double window = 0.5 - 0.5 * Math.cos(Math.PI * Math.min(1, edge));
            int at = middle + i;
            stretch[i + before] = at < 0 || at >= echoes.length ? 0 : (float) (window * echoes[at]);
        }
        return new PowerAtFrequency(stretch, sampleRateHz);
    }
}
