package evenwood.measure;

import evenwood.sound.AudioBlock;

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
    private static final double LEAST_RISE_DB = 2;
    /** What lies 60 dB under the whole sound cannot be heard to rise. */
    private static final double MASKED = 1e-6;
    private static final double SILENT = 1e-15;

    private final HopHistory history;
    private final OctaveEnergies octaves;
    private final int stepFrames;
    private final double[] now;
    private final double[] last;
    private final double[] beforeLast;
    private final double[] past;
    private final float[] rows = new float[3 * STEPS_PER_HOP];
    private int filled;
    private int step;
    private int place;
    private float peak;
    private double sum;

    AttackSteps(HopGrid grid, int capacityHops) {
        history = new HopHistory(capacityHops, 3 * STEPS_PER_HOP);
        octaves = new OctaveEnergies(grid.sampleRateHz());
        stepFrames = grid.hopFrames() / STEPS_PER_HOP;
        now = new double[octaves.count()];
        last = new double[octaves.count()];
        beforeLast = new double[octaves.count()];
        past = new double[octaves.count() * MEMORY];
    }

    void accept(AudioBlock block) {
        float[] in = block.samples();
        int frames = block.frames();
        int done = 0;
        while (done < frames) {
            int end = Math.min(frames, done + stepFrames - filled);
            filled += end - done;
            for (; done < end; done++) {
                float x = in[done];
                peak = Math.max(peak, Math.abs(x));
                sum += x * x;
                octaves.accept(x);
            }
            if (filled == stepFrames) {
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
        java.util.Arrays.fill(last, 0);
        java.util.Arrays.fill(beforeLast, 0);
        java.util.Arrays.fill(past, 0);
        filled = 0;
        step = 0;
        place = 0;
        peak = 0;
        sum = 0;
    }

    private void endStep() {
        double meanSquare = sum / stepFrames;
        octaves.endStep(now);
        rows[step] = peak;
        rows[STEPS_PER_HOP + step] = (float) meanSquare;
        rows[2 * STEPS_PER_HOP + step] = (float) riseDb(meanSquare);
        peak = 0;
        sum = 0;
        filled = 0;
        if (++step == STEPS_PER_HOP) {
            step = 0;
            long hop = history.append();
            for (int i = 0; i < rows.length; i++) {
                history.set(hop, i, rows[i]);
            }
        }
    }

    private double riseDb(double meanSquare) {
        double unheard = SILENT + MASKED * meanSquare;
        double rise = 0;
        for (int octave = 0; octave < now.length; octave++) {
            int row = octave * MEMORY;
            double raw = now[octave];
            double smooth = (beforeLast[octave] + 2 * last[octave] + raw) / 4;
            beforeLast[octave] = last[octave];
            last[octave] = raw;
            double before = 0;
            for (int back = NEAREST; back <= MEMORY; back++) {
                before = Math.max(before, past[row + (place - back + 2 * MEMORY) % MEMORY]);
            }
            double ratio = (smooth + unheard) / (before + unheard);
            if (ratio > 1) {
                rise += Math.max(0, Math.min(MOST_RISE_DB, 10 * Math.log10(ratio) - LEAST_RISE_DB));
            }
            past[row + place] = smooth;
        }
        place = (place + 1) % MEMORY;
        return rise;
    }
}
