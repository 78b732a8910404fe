package evenwood.takes;

import java.util.function.DoubleUnaryOperator;

/**
 * Stages that run out of room: the converter, an analogue stage before it (hard, one-sided or soft).
 *
 * <p>How: the hard and soft curves are memoryless with slope 1 at 0, so that quiet playing passes unchanged. Analogue
 * stages are computed at four times the rate and band-limited again, as the converter's own filter does to a clipped
 * wave: the tops are then flat only on average. {@link Reality#SAMPLED} leaves that out (exactly flat tops).
 */
public final class Overdrive {
    private static final double ONE_DB_SHORT = Math.pow(10, -1 / 20.0);

    /** Whether the overload happens on samples (a plug-in, a mixer's bus) or on a voltage before the converter. */
    public enum Reality { SAMPLED, ANALOGUE }

    /** The shape of a soft stage. */
    public enum Curve { TANH, CUBIC, DIODE }

    /**
     * @param clippedSamples frames at either rail, for the converter; for other stages frames beyond the limit
     * @param limitDbfs      where the tops are cut, at this tap; for soft stages where the output cannot exceed
     * @param onsetDbfs      peak at this tap above which peaks are at least 1 dB short: for a hard stage its limit, for a
     *                       soft one the output level at 1 dB of compression
     * @param driveDb        how far the highest peak is compressed
     */
    public record Truth(long clippedSamples, double limitDbfs, double onsetDbfs, double driveDb) { }

    private Overdrive() { }

    /** Too much gain into a converter of so many bits: its codes end at full scale. */
    static Injected<Truth> converter(float[] clean, double overDb, int bits) {
        float[] out = PackagedTakes.withPeak(clean.clone(), overDb);
        double codes = Math.pow(2, bits - 1);
        long clipped = 0;
        for (int i = 0; i < out.length; i++) {
            double code = Math.rint(out[i] * codes);
            double held = Math.max(-codes, Math.min(codes - 1, code));
            clipped += held == -codes || held == codes - 1 ? 1 : 0;
            out[i] = (float) (held / codes);
        }
        return new Injected<>(out, new Truth(clipped, 0, 0, overDb));
    }

    /** A hard limit below full scale, coupled through a first-order high-pass, then a gain. */
    static Injected<Truth> hard(float[] clean, int sampleRateHz, double overDb, boolean upperOnly, double couplingHz, double laterGainDb, Reality reality) {
        double limit = highest(clean, upperOnly) * Math.pow(10, -overDb / 20);
        long beyond = 0;
        for (float x : clean) {
            beyond += x > limit || !upperOnly && x < -limit ? 1 : 0;
        }
        float[] shaped = shape(clean, reality, x -> Math.min(limit, upperOnly ? x : Math.max(-limit, x)));
        scale(highPass(shaped, sampleRateHz, couplingHz), laterGainDb);
        double limitDbfs = 20 * Math.log10(limit) + laterGainDb;
        return new Injected<>(shaped, new Truth(beyond, limitDbfs, limitDbfs, overDb));
    }

    /** A stage that rounds the tops: the hardest peak comes out {@code driveDb} short. */
    static Injected<Truth> soft(float[] clean, int sampleRateHz, Curve curve, double driveDb, double couplingHz, Reality reality) {
        double hardest = highest(clean, curve == Curve.DIODE);
        double drive = inputWhere(curve, Math.pow(10, -driveDb / 20)) / hardest;
        double onset = inputWhere(curve, ONE_DB_SHORT) * ONE_DB_SHORT / drive;
        float[] shaped = shape(clean, reality, x -> curve(curve, drive * x) / drive);
        highPass(shaped, sampleRateHz, couplingHz);
        double limit = curve(curve, 1e6) / drive;
        return new Injected<>(shaped, new Truth(0, 20 * Math.log10(limit), 20 * Math.log10(onset), driveDb));
    }

    /** Slope 1 at 0. Cubic: u − u³/3 up to its top at 1; diode: an exponential knee upwards, four times as far off downwards. */
    static double curve(Curve curve, double u) {
        return switch (curve) {
            case TANH -> Math.tanh(u);
            case CUBIC -> Math.abs(u) < 1 ? u - u * u * u / 3 : Math.signum(u) * 2 / 3;
            case DIODE -> u > 0 ? 1 - Math.exp(-u) : -4 * (1 - Math.exp(u / 4));
        };
    }

    /** The input at which output over input is the ratio. */
    private static double inputWhere(Curve curve, double ratio) {
        double low = 1e-6;
        double high = 1e3;
        for (int i = 0; i < 200; i++) {
            double middle = Math.sqrt(low * high);
            if (curve(curve, middle) / middle > ratio) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double highest(float[] samples, boolean upperOnly) {
        double highest = 0;
        for (float x : samples) {
            highest = Math.max(highest, upperOnly ? x : Math.abs(x));
        }
        return highest;
    }

    private static float[] shape(float[] clean, Reality reality, DoubleUnaryOperator curve) {
        return reality == Reality.ANALOGUE ? FourTimesRate.shape(clean, curve) : each(clean, curve);
    }

    private static float[] each(float[] clean, DoubleUnaryOperator curve) {
        float[] out = new float[clean.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) curve.applyAsDouble(clean[i]);
        }
        return out;
    }

    /** First order, bilinear with the corner pre-warped; 0 Hz for none. */
    private static float[] highPass(float[] samples, int sampleRateHz, double cornerHz) {
        if (cornerHz <= 0) {
            return samples;
        }
        double k = Math.tan(Math.PI * cornerHz / sampleRateHz);
        double before = 0;
        double out = 0;
        for (int i = 0; i < samples.length; i++) {
            out = (samples[i] - before + (1 - k) * out) / (1 + k);
            before = samples[i];
            samples[i] = (float) out;
        }
        return samples;
    }

    private static void scale(float[] samples, double gainDb) {
        double gain = Math.pow(10, gainDb / 20);
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (samples[i] * gain);
        }
    }
}
