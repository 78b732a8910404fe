package evenwood.evaluate;

import java.util.SplittableRandom;

/**
 * What happens to a take around the stage that may overload, drawn at random: before it the player's touch (hard playing
 * is brighter) and the pickup's corner; after it coupling, level, noise and the converter.
 *
 * <p>Sampled instruments sound hard notes as louder copies of soft ones; a real string gets brighter, so half of the
 * takes are brightened with their own envelope, a change that no static characteristic makes.
 */
final class PickupChain {
    private static final double ENVELOPE_HZ = 20;
    private static final double BRIGHT_ABOVE_HZ = 1500;

    private final SplittableRandom random;
    private final int sampleRateHz;
    private int bits;
    private double gain = 1;

    PickupChain(long seed, int sampleRateHz) {
        random = new SplittableRandom(seed);
        this.sampleRateHz = sampleRateHz;
    }

    /** The sound that reaches the stage, peak 1. A fresh array. */
    float[] before(float[] take) {
        float[] out = take.clone();
        if (random.nextBoolean()) {
            brighten(out, random.nextDouble(0.5, 4));
        }
        if (random.nextDouble() < 0.6) {
            highPass(out, random.nextDouble(30, 250));
        }
        if (random.nextBoolean()) {
            scale(out, -1);
        }
        scale(out, 1 / peak(out));
        return out;
    }

    /** What the converter makes of what leaves the stage. A fresh array, with peaks of −20 to −1 dBFS. */
    float[] after(float[] stageOut) {
        float[] out = stageOut.clone();
        if (random.nextDouble() < 0.6) {
            highPass(out, random.nextDouble(5, 40));
        }
        gain = Math.pow(10, -random.nextDouble(1, 20) / 20) / peak(out);
        scale(out, gain);
        double noise = random.nextDouble() < 0.7 ? Math.pow(10, -random.nextDouble(62, 95) / 20) : 0;
        bits = random.nextBoolean() ? 16 : 24;
        double codes = Math.pow(2, bits - 1);
        SplittableRandom gaussian = random.split();
        for (int i = 0; i < out.length; i++) {
            double code = Math.rint((out[i] + noise * gaussian.nextGaussian()) * codes);
            out[i] = (float) (Math.max(-codes, Math.min(codes - 1, code)) / codes);
        }
        return out;
    }

    /** Of the converter that {@link #after} used. */
    int bits() {
        return bits;
    }

    /** From the stage's output to the converter's, in the last {@link #after}. */
    double gainDb() {
        return 20 * Math.log10(gain);
    }

    private void brighten(float[] x, double amount) {
        double[] envelope = new double[x.length];
        double k = 1 - Math.exp(-2 * Math.PI * ENVELOPE_HZ / sampleRateHz);
        double held = 0;
        for (int i = 0; i < x.length; i++) {
            held += k * (Math.abs(x[i]) - held);
            envelope[i] = held;
        }
        double most = 0;
        held = 0;
        for (int i = x.length - 1; i >= 0; i--) {
            held += k * (envelope[i] - held);
            envelope[i] = held;
            most = Math.max(most, held);
        }
        float[] high = x.clone();
        highPass(high, BRIGHT_ABOVE_HZ);
        for (int i = 0; i < x.length; i++) {
            x[i] += (float) (amount * envelope[i] / most * high[i]);
        }
    }

    /** First order, bilinear, corner pre-warped. */
    private void highPass(float[] x, double cornerHz) {
        double k = Math.tan(Math.PI * cornerHz / sampleRateHz);
        double before = 0;
        double out = 0;
        for (int i = 0; i < x.length; i++) {
            out = (x[i] - before + (1 - k) * out) / (1 + k);
            before = x[i];
            x[i] = (float) out;
        }
    }

    static double peak(float[] x) {
        double peak = 0;
        for (float v : x) {
            peak = Math.max(peak, Math.abs(v));
        }
        return peak;
    }

    static void scale(float[] x, double factor) {
        for (int i = 0; i < x.length; i++) {
            x[i] = (float) (x[i] * factor);
        }
    }
}
