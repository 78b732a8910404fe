package evenwood.measure;

import evenwood.sound.SoundFormat;
import java.util.Arrays;

/**
 * Stretches where the sound stands still at an extreme: at the converter's full scale, or at any level it returns to.
 *
 * <p>In: mono frames. Out: counts, see the accessors.
 * <p>How: a run is two or more equal samples that both neighbours leave towards zero. It is a cut-off top, not the slow
 * top of a low note in a coarse format, when the sound before it drops faster than a parabola with that much flat
 * within one quantising step can: a parabola of flat half-width h has fallen less than 4 steps at 2·h. Three such
 * samples at full scale are the usual rule for an over (reference 5.5, common practice). Of further values the eight most
 * frequent are kept, by Misra and Gries' counters (1982); one is a cut where the wave never passes it and returns to it
 * three times, or, with clicks standing above it, where it returns a dozen times and four times as often as any other.
 * <p>Limits: exactly equal samples only; noise added after the cut hides it here, not from {@link HalfWaveShapes}.
 * A float source over ±1.0 counts as full scale, for no integer format can carry it.
 * <p>Thread: one owner. {@link #accept} never allocates, locks, logs, or touches files.
 */
final class PlateauRuns {
    /** Three samples in a row are an over: common practice (reference 5.5). */
    static final int OVER_SAMPLES = 3;
    private static final int HELD_VALUES = 8;
    private static final int RING = 4096;
    private static final int CHUNK = 512;
    /** What the ring still holds of the time before a chunk. */
    private static final int FARTHEST_BACK = RING - CHUNK - 1;
    /** A 16-bit step: sources of finer formats often carry 16-bit sound. */
    private static final double COARSEST_USUAL_STEP = 1.0 / 32768;
    private static final int RETURNS_TO_AN_EXTREME = 3;
    private static final int RETURNS_UNDER_CLICKS = 12;
    /** 30 dB under the highest peak no stage runs out of room, but a coarse code has few values there (our choice). */
    private static final double FARTHEST_UNDER_CLICKS = Math.pow(10, -1.5);
    private static final double LONG_RUN_STEPS = 8;
    /** A pair of equal samples can stand on a natural top with neighbours 9 steps lower, not more. */
    private static final double PAIR_STEPS = 12;

    private final float fullScale;
    private final double step;
    private final float[] ring = new float[RING];
    private final float[] heldValue = new float[HELD_VALUES];
    private final long[] heldRuns = new long[HELD_VALUES];
    private final long[] heldSamples = new long[HELD_VALUES];
    private long frames;
    private float previous;
    private int run;
    private float highest;
    private float lowest;
    private long highestCodeSamples;
    private long lowestCodeSamples;
    /** At the mirror of the highest code, where many converters stop though one code is left below it. */
    private long mirroredCodeSamples;
    private long cutFullScaleSamples;

    PlateauRuns(SoundFormat format) {
        fullScale = (float) format.positiveFullScale();
        step = Math.max(COARSEST_USUAL_STEP, format.bitDepth() == 0 ? 0 : Math.pow(2, 1 - format.bitDepth()));
    }

    /** [audio thread] */
    void accept(float[] in, int count) {
        for (int start = 0; start < count; start += CHUNK) {
            int frames = Math.min(CHUNK, count - start);
            remember(in, start, frames);
            hear(in, start, frames);
        }
    }

    private void remember(float[] in, int start, int count) {
        int at = (int) (frames & (RING - 1));
        int first = Math.min(count, RING - at);
        System.arraycopy(in, start, ring, at, first);
        System.arraycopy(in, start + first, ring, 0, count - first);
    }

    private void hear(float[] in, int start, int count) {
        float before = previous;
        for (int i = start; i < start + count; i++) {
            float x = in[i];
            if (Math.abs(x) >= fullScale) {
                x = countAtFullScale(x);
            }
            if (x == before) {
                run++;
            } else {
                if (run >= 2 && before != 0) {
                    frames += i - start;
                    previous = before;
                    endRun(x);
                    frames -= i - start;
                }
                run = 1;
                before = x;
                highest = Math.max(highest, x);
                lowest = Math.min(lowest, x);
            }
        }
        previous = before;
        frames += count;
    }

    private float countAtFullScale(float x) {
        if (x > 0) {
            highestCodeSamples++;
            return fullScale;
        }
        if (x <= -1) {
            lowestCodeSamples++;
        } else {
            mirroredCodeSamples++;
        }
        return -fullScale;
    }

    /** Samples at or beyond full scale, when at least an over's worth of them are cut-off tops; otherwise 0. */
    long clippedSamples() {
        long open = run >= OVER_SAMPLES && Math.abs(previous) == fullScale && isSteepBefore(previous) ? run : 0;
        long negative = lowestCodeSamples > 0 ? lowestCodeSamples : mirroredCodeSamples;
        return cutFullScaleSamples + open >= OVER_SAMPLES ? highestCodeSamples + negative : 0;
    }

    /** Where the wave stood still so often that it was cut there, with its sign; 0 when nowhere. */
    float cutValue() {
        return cut() < 0 ? 0 : heldValue[cut()];
    }

    /** How often it did; 0 when it was not cut. */
    long cutRuns() {
        return cut() < 0 ? 0 : heldRuns[cut()];
    }

    long cutSamples() {
        return cut() < 0 ? 0 : heldSamples[cut()];
    }

    void reset() {
        frames = 0;
        previous = 0;
        run = 0;
        highest = 0;
        lowest = 0;
        highestCodeSamples = 0;
        lowestCodeSamples = 0;
        mirroredCodeSamples = 0;
        cutFullScaleSamples = 0;
        Arrays.fill(heldRuns, 0);
    }

    private void endRun(float after) {
        float value = previous;
        double sign = Math.signum(value);
        double dropAfter = sign * (value - after);
        double dropBefore = frames > run ? sign * (value - back(run + 1)) : 0;
        if (dropAfter <= 0 || dropBefore <= 0) {
            return;
        }
        boolean cut = run == 2 ? Math.min(dropAfter, dropBefore) > PAIR_STEPS * step : isSteepBefore(value);
        if (!cut) {
            return;
        }
        if (Math.abs(value) == fullScale) {
            cutFullScaleSamples += run;
        } else if (run >= OVER_SAMPLES) {
            hold(value);
        }
    }

    private boolean isSteepBefore(float value) {
        int distance = Math.min(run + Math.max(1, run / 2), FARTHEST_BACK);
        return frames >= distance && Math.signum(value) * (value - back(distance)) > LONG_RUN_STEPS * step;
    }

    /** The sample so many frames back; 1 is the one heard last. */
    private float back(int distance) {
        return ring[(int) ((frames - distance) & (RING - 1))];
    }

    private void hold(float value) {
        int free = -1;
        for (int i = 0; i < HELD_VALUES; i++) {
            if (heldRuns[i] > 0 && heldValue[i] == value) {
                heldRuns[i]++;
                heldSamples[i] += run;
                return;
            }
            if (heldRuns[i] == 0) {
                free = i;
            }
        }
        if (free >= 0) {
            heldValue[free] = value;
            heldRuns[free] = 1;
            heldSamples[free] = run;
        } else {
            for (int i = 0; i < HELD_VALUES; i++) {
                heldRuns[i]--;
            }
        }
    }

    /** Which of the held values is a cut; −1 when none is. */
    private int cut() {
        int most = 0;
        double tooSoft = Math.max(highest, -lowest) * FARTHEST_UNDER_CLICKS;
        for (int i = 1; i < HELD_VALUES; i++) {
            if (heldRuns[i] > heldRuns[most]) {
                most = i;
            }
        }
        for (int i = 0; i < HELD_VALUES; i++) {
            double extreme = heldValue[i] > 0 ? highest : -lowest;
            if (heldRuns[i] >= RETURNS_TO_AN_EXTREME && Math.abs(heldValue[i]) >= extreme) {
                return i;
            }
        }
        return heldRuns[most] >= RETURNS_UNDER_CLICKS && Math.abs(heldValue[most]) > tooSoft && standsOut(most) ? most : -1;
    }

    /** Apart from its mirror image, which a symmetric stage holds as often. */
    private boolean standsOut(int most) {
        for (int i = 0; i < HELD_VALUES; i++) {
            boolean mirror = Math.abs(heldValue[i] + heldValue[most]) <= 2 * step;
            if (i != most && !mirror && heldRuns[i] * 4 > heldRuns[most]) {
                return false;
            }
        }
        return true;
    }
}
