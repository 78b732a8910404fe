package evenwood.takes;

import java.util.List;

/**
 * Faults put into clean takes, by kind and amount, with the exact truth: what the meters are evaluated against.
 *
 * <p>In: mono samples, left alone. Out: fresh samples and the truth in the project's conventions (plain RMS in dBFS; hum
 * is mains harmonics 1 to 5, buzz 6 and above). The same seed always gives the same samples.
 */
public final class Faults {
    private Faults() { }

    /** So much gain that the highest peak would be {@code overDb} above full scale, into a converter of 16 or 24 bits. */
    public static Injected<Overdrive.Truth> converterClip(float[] clean, double overDb, int bits) {
        return Overdrive.converter(clean, overDb, bits);
    }

    /** A stage before the converter cuts both polarities {@code overDb} under the highest peak; coupled, then amplified. */
    public static Injected<Overdrive.Truth> stageClip(float[] clean, int sampleRateHz, double overDb, double couplingHz, double laterGainDb, Overdrive.Reality reality) {
        return Overdrive.hard(clean, sampleRateHz, overDb, false, couplingHz, laterGainDb, reality);
    }

    /** The same with the upper polarity alone, {@code overDb} under its own highest peak. */
    public static Injected<Overdrive.Truth> oneSidedClip(float[] clean, int sampleRateHz, double overDb, double couplingHz, Overdrive.Reality reality) {
        return Overdrive.hard(clean, sampleRateHz, overDb, true, couplingHz, 0, reality);
    }

    /** A stage that rounds the tops so that the hardest peak comes out {@code driveDb} short; 0 Hz for no coupling. */
    public static Injected<Overdrive.Truth> saturation(float[] clean, int sampleRateHz, Overdrive.Curve curve, double driveDb, double couplingHz, Overdrive.Reality reality) {
        return Overdrive.soft(clean, sampleRateHz, curve, driveDb, couplingHz, reality);
    }

    /** Hum, buzz or both. @param levelDbfs RMS of all harmonics together */
    public static Injected<Mains.Truth> mains(float[] clean, int sampleRateHz, Mains.Origin origin, double mainsHz, double driftHz, double levelDbfs, long seed) {
        return Mains.add(clean, sampleRateHz, origin, mainsHz, driftHz, levelDbfs, seed);
    }

    /** @param pinkShare share of the power that is pink, 0 to 1. Truth: the level, dBFS. */
    public static Injected<Double> hiss(float[] clean, int sampleRateHz, double levelDbfs, double pinkShare, long seed) {
        float[] out = clean.clone();
        float[] noise = RoomNoise.mixed(out.length, sampleRateHz, levelDbfs, seed, pinkShare);
        for (int i = 0; i < out.length; i++) {
            out[i] += noise[i];
        }
        return new Injected<>(out, levelDbfs);
    }

    public static Injected<Tones.Truth> tone(float[] clean, int sampleRateHz, Tones.Kind kind, double levelDbfs, long seed) {
        return Tones.add(clean, sampleRateHz, kind, levelDbfs, seed);
    }

    public static Injected<Tones.Truth> phone(float[] clean, int sampleRateHz, double peakDbfs, long seed) {
        return Tones.phone(clean, sampleRateHz, peakDbfs, seed);
    }

    public static Injected<List<Interruptions.Spot>> crackle(float[] clean, int sampleRateHz, double clicksPerSecond, double highestDbfs, long seed) {
        return Interruptions.crackle(clean, sampleRateHz, clicksPerSecond, highestDbfs, seed);
    }

    public static Injected<List<Interruptions.Spot>> dropouts(float[] clean, int sampleRateHz, Interruptions.Hole hole, int count, long seed) {
        return Interruptions.dropouts(clean, sampleRateHz, hole, count, seed);
    }

    /** Someone turns a knob at once. Truth: the frame of the step. */
    public static Injected<Long> gainStep(float[] clean, int sampleRateHz, double atSeconds, double changeDb) {
        float[] out = clean.clone();
        long frame = Math.round(atSeconds * sampleRateHz);
        double gain = Math.pow(10, changeDb / 20);
        for (int i = (int) frame; i < out.length; i++) {
            out[i] = (float) (out[i] * gain);
        }
        return new Injected<>(out, frame);
    }

    /** Truth: the offset as a fraction of full scale. */
    public static Injected<Double> dcOffset(float[] clean, double offset) {
        float[] out = clean.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] += (float) offset;
        }
        return new Injected<>(out, offset);
    }
}
