package evenwood.measure;

import evenwood.sound.AudioBlock;
import java.util.Arrays;

/**
 * What happens in steps of an eighth of a hop (5.3 ms): peak, energy, and how much of the sound is new.
 *
 * <p>In: mono blocks of any size. Out: for each step of each hop the sample peak, the mean square, and the rise: the sum
 * over octaves of the dB by which the octave now exceeds its highest step of 21 to 53 ms ago, less the 2 dB by which
 * noise does, at most 15 dB each.
 * <p>How: the highest of several steps, not their mean, so that the pulses of a low string are no rises, and
 * steps smoothed by 1 2 1, so that pulses about as far apart as the steps are none either. Source: our
 * choice, after spectral flux with a maximum filter (Böck and Widmer, DAFx 2013).
 * <p>Thread: one owner. {@link #accept} never allocates.
 */
final class AttackSteps {
    static final int STEPS_PER_HOP = 8;
    private static final int MEMORY = 10;
    private static final int NEAREST = 4;
    private static final double MOST_RISE_DB = 15;
    private static final double LEAST_RISE = Math.pow(10, 0.2);
    /** What lies 60 dB under the whole sound cannot be heard to rise. */
    private static final double MASKED = 1e-6;
    private static final double SILENT = 1e-15;

    private final HopHistory history;
    private final OctaveEnergies octaves;
    private final float[] stepSamples;
    private final double[] now;
    private final double[] last;
    private final double[] beforeLast;
    private final double[][] past;
    private final float[] rows = new float[3 * STEPS_PER_HOP];
    private int filled;
    private int step;
    private int place;

    AttackSteps(HopGrid grid, int capacityHops) {
        history = new HopHistory(capacityHops, 3 * STEPS_PER_HOP);
        stepSamples = new float[grid.hopFrames() / STEPS_PER_HOP];
        octaves = new OctaveEnergies(grid, stepSamples.length);
        now = new double[octaves.count()];
        last = new double[octaves.count()];
        beforeLast = new double[octaves.count()];
        past = new double[MEMORY][octaves.count()];
    }

    void accept(AudioBlock block) {
        int frames = block.frames();
        int done = 0;
        while (done < frames) {
            int count = Math.min(frames - done, stepSamples.length - filled);
            System.arraycopy(block.samples(), done, stepSamples, filled, count);
            filled += count;
            done += count;
            if (filled == stepSamples.length) {
                endStep();
            }
        }
    }

    long firstStep() {
        return history.firstHop() * STEPS_PER_HOP;
    }

    long endStepNumber() {
        return history.endHop() * STEPS_PER_HOP;
    }

    float peak(long at) {
        return history.get(at / STEPS_PER_HOP, (int) (at % STEPS_PER_HOP));
    }

    float meanSquare(long at) {
        return history.get(at / STEPS_PER_HOP, STEPS_PER_HOP + (int) (at % STEPS_PER_HOP));
    }

    float riseDb(long at) {
        return history.get(at / STEPS_PER_HOP, 2 * STEPS_PER_HOP + (int) (at % STEPS_PER_HOP));
    }

    /** The highest rise within a hop, 0 for a hop not remembered. [audio thread] */
    float highestRiseDb(long hop) {
        float highest = 0;
        if (hop >= history.firstHop() && hop < history.endHop()) {
            for (int i = 0; i < STEPS_PER_HOP; i++) {
                highest = Math.max(highest, history.get(hop, 2 * STEPS_PER_HOP + i));
            }
        }
        return highest;
    }

    void reset() {
        history.reset();
        octaves.reset();
        Arrays.fill(last, 0);
        Arrays.fill(beforeLast, 0);
        for (double[] row : past) {
            Arrays.fill(row, 0);
        }
        filled = 0;
        step = 0;
        place = 0;
    }

    private void endStep() {
        octaves.accept(stepSamples, now);
        float meanSquare = meanSquare(stepSamples);
        rows[step] = peak(stepSamples);
        rows[STEPS_PER_HOP + step] = meanSquare;
        rows[2 * STEPS_PER_HOP + step] = (float) riseDb(SILENT + MASKED * meanSquare);
        filled = 0;
        if (++step == STEPS_PER_HOP) {
            step = 0;
            long hop = history.append();
            for (int i = 0; i < rows.length; i++) {
                history.set(hop, i, rows[i]);
            }
        }
    }

    private static float peak(float[] x) {
        float highest = 0;
        float lowest = 0;
        for (float sample : x) {
            highest = sample > highest ? sample : highest;
            lowest = sample < lowest ? sample : lowest;
        }
        return Math.max(highest, -lowest);
    }

    private static float meanSquare(float[] x) {
        float even = 0;
        float odd = 0;
        for (int i = 0; i < x.length; i += 2) {
            even += x[i] * x[i];
            odd += x[i + 1] * x[i + 1];
        }
        return (even + odd) / x.length;
    }

    private double riseDb(double unheard) {
        double rise = 0;
        for (int octave = 0; octave < now.length; octave++) {
            double smooth = (beforeLast[octave] + 2 * last[octave] + now[octave]) / 4;
            beforeLast[octave] = last[octave];
            last[octave] = now[octave];
            double before = highestBefore(octave);
            past[place][octave] = smooth;
            if (smooth + unheard > LEAST_RISE * (before + unheard)) {
                rise += Math.min(MOST_RISE_DB, 10 * Math.log10((smooth + unheard) / (before + unheard) / LEAST_RISE));
            }
        }
        place = (place + 1) % MEMORY;
        return rise;
    }

    /** The highest of the steps 4 to 10 ago. The row at {@code place} is the oldest, 10 ago; the next is 9 ago. */
    private double highestBefore(int octave) {
        double highest = 0;
        for (int i = 0, row = place; i <= MEMORY - NEAREST; i++) {
            highest = Math.max(highest, past[row][octave]);
            row = row + 1 == MEMORY ? 0 : row + 1;
        }
        return highest;
    }
}
