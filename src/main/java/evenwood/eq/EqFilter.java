package evenwood.eq;

import evenwood.measure.BiquadCoefficients;
import java.util.List;

/**
 * One equaliser stage as a player names it: shape, frequency, width, gain.
 *
 * <p>How: the digital filters of the audio EQ cookbook (W3C Working Group Note, 8 June 2021, by R. Bristow-Johnson); high-
 * and low-pass of other orders are Butterworth cascades of the same sections and one first-order section.
 * <p>Limits: the bilinear transform narrows peaks near half the sample rate; prediction and rendering use the same filter,
 * so what is predicted is what is heard (EqFilterReferenceTest: coefficients 1e-12, magnitudes 0.001 dB).
 *
 * @param kind        shape
 * @param frequencyHz centre of a peak or notch, half-gain corner of a shelf, −3 dB corner of a pass filter (at Butterworth Q)
 * @param q           the cookbook's Q; for shelves too, 0.7071 being slope 1; pass filters of another order than 2 ignore it
 * @param gainDb      of a peak or shelf; 0 for the others
 * @param order       1 to 4 for a pass filter, 2 otherwise
 */
public record EqFilter(FilterKind kind, double frequencyHz, double q, double gainDb, int order) {
    /** Butterworth, and a shelf of slope 1. */
    public static final double BUTTERWORTH_Q = Math.sqrt(0.5);

    public EqFilter {
        if (!(frequencyHz > 0) || !(q > 0) || !Double.isFinite(gainDb) || order < 1 || order > 4) {
            throw new IllegalArgumentException("filter: frequencyHz=" + frequencyHz + ", q=" + q + ", gainDb=" + gainDb + ", order="
                + order + ", but frequency and Q must be positive, gain finite, order 1 to 4");
        }
    }

    public static EqFilter peak(double frequencyHz, double q, double gainDb) {
        return new EqFilter(FilterKind.PEAK, frequencyHz, q, gainDb, 2);
    }

    public static EqFilter lowShelf(double frequencyHz, double q, double gainDb) {
        return new EqFilter(FilterKind.LOW_SHELF, frequencyHz, q, gainDb, 2);
    }

    public static EqFilter highShelf(double frequencyHz, double q, double gainDb) {
        return new EqFilter(FilterKind.HIGH_SHELF, frequencyHz, q, gainDb, 2);
    }

    public static EqFilter highPass(double frequencyHz, int order) {
        return new EqFilter(FilterKind.HIGH_PASS, frequencyHz, BUTTERWORTH_Q, 0, order);
    }

    public static EqFilter lowPass(double frequencyHz, int order) {
        return new EqFilter(FilterKind.LOW_PASS, frequencyHz, BUTTERWORTH_Q, 0, order);
    }

    public static EqFilter notch(double frequencyHz, double q) {
        return new EqFilter(FilterKind.NOTCH, frequencyHz, q, 0, 2);
    }

    /** The same stage with another gain. */
    public EqFilter withGainDb(double newGainDb) {
        return new EqFilter(kind, frequencyHz, q, newGainDb, order);
    }

    /** The sections that make this stage at a sample rate, in series; none when it lies at or above half the rate. */
    public List<BiquadCoefficients> sections(double sampleRateHz) {
        return frequencyHz >= sampleRateHz / 2 ? List.of() : CookbookSections.of(this, sampleRateHz);
    }

    public double responseDb(double atHz, double sampleRateHz) {
        double sum = 0;
        for (BiquadCoefficients section : sections(sampleRateHz)) {
            sum += section.responseDb(atHz, sampleRateHz);
        }
        return sum;
    }
}
