package evenwood.measure;

import be.tarsos.dsp.util.ConcurrencyUtils;
import be.tarsos.dsp.util.fft.FloatFFT;

/**
 * Opens the fast Fourier transform of TarsosDSP so that it stays on the caller's thread.
 *
 * <p>From 16 384 points on the library starts pool threads that keep the program from ending; the thresholds are raised
 * out of reach before the first transform is made. Powers of two allocate nothing per call.
 */
final class SingleThreadTransform {
    static {
        ConcurrencyUtils.setThreadsBeginN_1D_FFT_2Threads(Integer.MAX_VALUE);
        ConcurrencyUtils.setThreadsBeginN_1D_FFT_4Threads(Integer.MAX_VALUE);
    }

    private SingleThreadTransform() { }

    static FloatFFT ofSize(int frames) {
        if (Integer.bitCount(frames) != 1) {
            throw new IllegalArgumentException("transform: frames=" + frames + ", but it must be a power of two");
        }
        return new FloatFFT(frames);
    }
}
