package evenwood.sound;

/** Plain-sum spectra for the demo's tests, independent of the meters. */
final class Spectra {
    private Spectra() { }

    /** Amplitude at one frequency under a Hann window over the given frames. */
    static double amplitude(float[] x, int from, int frames, int sampleRateHz, double hz) {
        double real = 0;
        double imaginary = 0;
        double stepRe = Math.cos(2 * Math.PI * hz / sampleRateHz);
        double stepIm = Math.sin(2 * Math.PI * hz / sampleRateHz);
        double re = 1;
        double im = 0;
        for (int i = 0; i < frames; i++) {
            double v = (1 - Math.cos(2 * Math.PI * i / frames)) * x[from + i];
            real += v * re;
            imaginary += v * im;
            double turned = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = turned;
        }
        return 2 * Math.hypot(real, imaginary) / frames;
    }

    /** Where the long transform peaks near a frequency, by golden section; the window must be long against the search. */
    static double peakHz(float[] x, int from, int frames, int sampleRateHz, double nearHz) {
        double width = 0.8 * sampleRateHz / frames;
        double low = nearHz - width;
        double high = nearHz + width;
        double golden = (Math.sqrt(5) - 1) / 2;
        for (int i = 0; i < 40; i++) {
            double a = high - golden * (high - low);
            double b = low + golden * (high - low);
            if (amplitude(x, from, frames, sampleRateHz, a) > amplitude(x, from, frames, sampleRateHz, b)) {
                high = b;
            } else {
                low = a;
            }
        }
        return (low + high) / 2;
    }

    static double cents(double hz, double referenceHz) {
        return 1200 * Math.log(hz / referenceHz) / Math.log(2);
    }

    static double rmsDb(float[] x, int from, int to) {
        double power = 0;
        for (int i = from; i < to; i++) {
            power += x[i] * (double) x[i];
        }
        return 10 * Math.log10(power / (to - from));
    }

    static double peakDb(float[] x, int from, int to) {
        double peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs(x[i]));
        }
        return 20 * Math.log10(peak);
    }

    /** RMS within about an octave around a frequency. */
    static double octaveDb(float[] x, int from, int to, int sampleRateHz, double centreHz) {
        Resonance band = Resonance.mode(sampleRateHz, centreHz, 1.41, 1);
        float[] out = new float[x.length];
        for (int i = from; i < to; i++) {
            out[i] = (float) band.next(x[i]);
        }
        return rmsDb(out, from, to);
    }
}
