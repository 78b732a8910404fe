package evenwood.measure;

/**
 * How strongly a frequency counts: A as a quiet ear hears, C as a loud one, Z all alike.
 *
 * <p>In: frequency in hertz. Out: gain in dB, 0 at 1 kHz; −Infinity for A and C at 0 Hz.
 * <p>How: the analytic curves, not digital filters, so nothing is lost near half the sample rate (a plain bilinear
 * A filter at 48 kHz is 6.2 dB short at 16 kHz). Weight the bins or bands of a spectrum with it. Source: IEC
 * 61672-1:2013 Annex E; checked against all table values of clause 5.5 (WeightingReferenceTest). Class limits in the
 * test are those of the 2013 edition, ±0.7 dB at 1 kHz, not the wider ones of 2002.
 */
public enum Weighting {
    A {
        @Override
        double response(double hz) {
            double f2 = hz * hz;
            return F4_HZ * F4_HZ * f2 * f2
                / ((f2 + F1_HZ * F1_HZ) * Math.sqrt(f2 + F2_HZ * F2_HZ) * Math.sqrt(f2 + F3_HZ * F3_HZ) * (f2 + F4_HZ * F4_HZ));
        }
    },
    C {
        @Override
        double response(double hz) {
            double f2 = hz * hz;
            return F4_HZ * F4_HZ * f2 / ((f2 + F1_HZ * F1_HZ) * (f2 + F4_HZ * F4_HZ));
        }
    },
    Z {
        @Override
        double response(double hz) {
            return 1;
        }
    };

    // IEC 61672-1:2013 Annex E, poles from the defining equations with full precision (printed: 20.60, 107.7, 737.9, 12194).
    private static final double F1_HZ = 20.598997057618;
    private static final double F2_HZ = 107.652648643046;
    private static final double F3_HZ = 737.862230736290;
    private static final double F4_HZ = 12194.217147998012;
    private static final double REFERENCE_HZ = 1000;

    public double gainDb(double frequencyHz) {
        return 20 * Math.log10(response(frequencyHz) / response(REFERENCE_HZ));
    }

    /** What a power at this frequency is multiplied by. */
    public double powerGain(double frequencyHz) {
        double ratio = response(frequencyHz) / response(REFERENCE_HZ);
        return ratio * ratio;
    }

    abstract double response(double hz);
}
