package evenwood.measure;

import be.tarsos.dsp.util.fft.FloatFFT;

/**
 * The autocorrelation that belongs to a power spectrum: r(τ) = Σ p(k)·cos(π·k·τ/size), τ from 0 to {@code size}.
 *
 * <p>How: a cosine transform by one real transform of half the length that a plain inverse would need; odd lags follow
 * from each other by sums. Source: Numerical Recipes in C, 2nd edition, section 12.3 (equations 12.3.17 to 12.3.19);
 * PowerCorrelationReferenceTest compares with the sum itself.
 * <p>Thread: one owner; only the constructor allocates.
 */
final class PowerCorrelation {
    private final int size;
    private final FloatFFT transform;
    private final float[] work;
    private final float[] sines;
    private final float[] cosines;
    private final float[] correlation;

    PowerCorrelation(int size) {
        this.size = size;
        transform = SingleThreadTransform.ofSize(size);
        work = new float[size];
        sines = new float[size];
        cosines = new float[size];
        correlation = new float[size];
        for (int k = 0; k < size; k++) {
            sines[k] = (float) Math.sin(Math.PI * k / size);
            cosines[k] = (float) Math.cos(Math.PI * k / size);
        }
    }

    /** For a spectrum of at most half the size; the array belongs to this object. */
    float[] of(float[] power) {
        java.util.Arrays.fill(work, 0);
        work[0] = power[0] / 2;
        double first = power[0] / 2;
        for (int k = 1; k < power.length; k++) {
            float p = power[k];
            work[k] += p * (0.5f - sines[k]);
            work[size - k] += p * (0.5f + sines[k]);
            first += p * cosines[k];
        }
        transform.realForward(work);
        correlation[0] = work[0];
        correlation[1] = (float) first;
        for (int j = 1; j < size / 2; j++) {
            correlation[2 * j] = work[2 * j];
            first -= work[2 * j + 1];
            correlation[2 * j + 1] = (float) first;
        }
        return correlation;
    }
}
