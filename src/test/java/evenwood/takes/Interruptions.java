package evenwood.takes;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** What bad contacts and late computers do to a take: clicks, holes, stuck and repeated stretches. */
public final class Interruptions {
    private static final double SHORTEST_DROPOUT_MS = 1;
    private static final double LONGEST_DROPOUT_MS = 50;

    /** What fills the hole. */
    public enum Hole { ZEROS, HELD_SAMPLE, REPEATED_BLOCK }

    /** One of them. @param startFrame first frame   @param frames how long   @param peak its amplitude, for a click */
    public record Spot(long startFrame, int frames, double peak) { }

    private Interruptions() { }

    /**
     * Clicks as from a bad jack: a jump that dies away exponentially within 0.1 to 0.8 ms, followed by a weaker one the
     * other way; amplitudes spread evenly in dB over 12 dB below the highest; times as random as rain.
     */
    static Injected<List<Spot>> crackle(float[] clean, int sampleRateHz, double clicksPerSecond, double highestDbfs, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] out = clean.clone();
        List<Spot> clicks = new ArrayList<>();
        double seconds = waiting(random, clicksPerSecond);
        while ((seconds + 0.02) * sampleRateHz < out.length) {
            int start = (int) (seconds * sampleRateHz);
            double peak = Math.pow(10, (highestDbfs - 12 * random.nextDouble()) / 20) * (random.nextBoolean() ? 1 : -1);
            double decayFrames = Math.max(1, (0.0001 + 0.0007 * random.nextDouble()) * sampleRateHz);
            int frames = (int) Math.ceil(8 * decayFrames);
            int turn = (int) Math.ceil(2 * decayFrames);
            for (int i = 0; i < frames && start + i < out.length; i++) {
                double back = i < turn ? 0 : -0.45 * Math.exp(-(i - turn) / decayFrames);
                out[start + i] += (float) (peak * (Math.exp(-i / decayFrames) + back));
            }
            clicks.add(new Spot(start, frames, Math.abs(peak)));
            seconds += 0.03 + waiting(random, clicksPerSecond);
        }
        return new Injected<>(out, List.copyOf(clicks));
    }

    /** Holes of 1 to 50 ms, the given number of them, only where the take is sounding, never overlapping. */
    static Injected<List<Spot>> dropouts(float[] clean, int sampleRateHz, Hole hole, int count, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        float[] out = clean.clone();
        List<Spot> holes = new ArrayList<>();
        double loud = 0;
        for (float x : clean) {
            loud = Math.max(loud, Math.abs(x));
        }
        for (int tries = 0; holes.size() < count && tries < 10_000; tries++) {
            double ms = SHORTEST_DROPOUT_MS * Math.pow(LONGEST_DROPOUT_MS / SHORTEST_DROPOUT_MS, random.nextDouble());
            int frames = Math.max(8, (int) (ms * sampleRateHz / 1000));
            int start = frames + random.nextInt(Math.max(1, clean.length - 2 * frames));
            if (start + frames < clean.length && sounding(clean, start, frames, loud) && free(holes, start, frames)) {
                fill(out, hole, start, frames);
                holes.add(new Spot(start, frames, 0));
            }
        }
        if (holes.size() < count) {
            throw new IllegalArgumentException("dropouts: only " + holes.size() + " of " + count + " fit where the take is sounding");
        }
        return new Injected<>(out, List.copyOf(holes));
    }

    private static void fill(float[] out, Hole hole, int start, int frames) {
        float held = out[start - 1];
        for (int i = start; i < start + frames; i++) {
            out[i] = switch (hole) {
                case ZEROS -> 0;
                case HELD_SAMPLE -> held;
                case REPEATED_BLOCK -> out[i - frames];
            };
        }
    }

    private static boolean sounding(float[] clean, int start, int frames, double loud) {
        double power = 0;
        for (int i = start; i < start + frames; i++) {
            power += clean[i] * (double) clean[i];
        }
        return Math.sqrt(power / frames) > loud / 200;
    }

    private static boolean free(List<Spot> holes, int start, int frames) {
        return holes.stream().allMatch(other -> start > other.startFrame() + other.frames() + 4800 || start + frames + 4800 < other.startFrame());
    }

    private static double waiting(SplittableRandom random, double perSecond) {
        return -Math.log(1 - random.nextDouble()) / perSecond;
    }
}
