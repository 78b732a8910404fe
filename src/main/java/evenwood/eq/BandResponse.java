package evenwood.eq;

import evenwood.measure.BiquadCoefficients;
import evenwood.measure.ThirdOctave;
import java.util.List;

/**
 * What a filter does to whole third-octave bands: the mean of its power response over each band.
 *
 * <p>How: {@value #POINTS} points a band, evenly spaced on the logarithmic axis, as an even spectrum within the band would
 * be changed. A narrow notch therefore counts with its width, not with its depth. Source: definition; the number of points
 * is our choice (BandResponseTest holds it against a fine integral).
 * <p>Thread: immutable.
 */
public final class BandResponse {
    private static final int POINTS = 5;

    private final List<ThirdOctave> bands;
    private final double sampleRateHz;
    private final double[] cos;
    private final double[] cosTwice;

    public BandResponse(List<ThirdOctave> bands, double sampleRateHz) {
        this.bands = List.copyOf(bands);
        this.sampleRateHz = sampleRateHz;
        cos = new double[bands.size() * POINTS];
        cosTwice = new double[cos.length];
        for (int i = 0; i < cos.length; i++) {
            ThirdOctave band = bands.get(i / POINTS);
            double part = (i % POINTS + 0.5) / POINTS;
            double hz = band.lowerHz() * Math.pow(band.upperHz() / band.lowerHz(), part);
            double w = 2 * Math.PI * Math.min(0.5, hz / sampleRateHz);
            cos[i] = Math.cos(w);
            cosTwice[i] = Math.cos(2 * w);
        }
    }

    public List<ThirdOctave> bands() {
        return bands;
    }

    public double sampleRateHz() {
        return sampleRateHz;
    }

    public double[] db(EqFilter filter) {
        return db(filter.sections(sampleRateHz), 0);
    }

    public double[] db(EqChain chain) {
        return db(chain.sections(sampleRateHz), chain.gainDb());
    }

    private double[] db(List<BiquadCoefficients> sections, double gainDb) {
        double[] power = new double[cos.length];
        java.util.Arrays.fill(power, Math.pow(10, gainDb / 10));
        for (BiquadCoefficients section : sections) {
            multiply(power, section);
        }
        double[] db = new double[bands.size()];
        for (int band = 0; band < db.length; band++) {
            double sum = 0;
            for (int i = 0; i < POINTS; i++) {
                sum += power[band * POINTS + i];
            }
            db[band] = 10 * Math.log10(Math.max(SILENCE, sum / POINTS));
        }
        return db;
    }

    /** −200 dB, so that differences of responses stay numbers. */
    private static final double SILENCE = 1e-20;

    /** |b0 + b1·z + b2·z²|² = b0² + b1² + b2² + 2·b1·(b0 + b2)·cos w + 2·b0·b2·cos 2w on the unit circle. */
    private void multiply(double[] power, BiquadCoefficients c) {
        double n0 = c.b0() * c.b0() + c.b1() * c.b1() + c.b2() * c.b2();
        double n1 = 2 * c.b1() * (c.b0() + c.b2());
        double n2 = 2 * c.b0() * c.b2();
        double d0 = 1 + c.a1() * c.a1() + c.a2() * c.a2();
        double d1 = 2 * c.a1() * (1 + c.a2());
        double d2 = 2 * c.a2();
        for (int i = 0; i < power.length; i++) {
            power[i] *= Math.max(0, n0 + n1 * cos[i] + n2 * cosTwice[i]) / (d0 + d1 * cos[i] + d2 * cosTwice[i]);
        }
    }
}
