package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.Arrays;
import java.util.List;

/**
 * How hard was played: the peak of the stroke that is being heard, at every moment of the playing.
 *
 * <p>Out: quantiles of that peak over time. What was struck counts until the next is, half a second at most, so that a damped note is worth a
 * ringing one; what a bow keeps going counts as long as it does not sink by {@value #SUNK_DB} dB in half a second.
 * <p>How: the peak at a moment is the highest of the last half second and the next quarter, but what lies beyond an onset counts
 * less, by {@value #BEYOND_ONSET_DB} dB times how clear that onset is ({@link Onset#clearness}). So nothing is all or nothing:
 * an onset that is only just told from nothing changes nothing, and where the hops and steps fall does not move the
 * reading. Source: our choice (DynamicsRealAudioTest).
 * <p>Limits: soft strokes that hardly rise out of what still rings count little.
 */
final class Strokes {
    private static final int STEPS = AttackSteps.STEPS_PER_HOP;
    private static final double LONGEST_SECONDS = 0.5;
    private static final double SUNK_DB = 6;
    private static final double BEYOND_ONSET_DB = 20;
    /** An onset is placed some steps late; what rings on just before it is lower than its own peak and does no harm. */
    private static final int ATTACK_STEPS = 6;
    /** Moments are counted in grades of 0.02 dB, each by its mean: sorting those of an hour would take a tenth of a second. */
    private static final double LOWEST_DBFS = -200;
    private static final int GRADES_PER_DB = 50;
    private static final int GRADES = 220 * GRADES_PER_DB;

    private final long first;
    private final int count;
    private final int longest;
    private final double[] peakDbfs;
    private final double[] clearness;
    private final boolean[] playing;

    Strokes(HopGrid grid, AttackSteps steps, List<Onset> onsets, ActivityReading activity) {
        first = steps.firstStep();
        count = (int) (steps.endStepNumber() - first);
        longest = (int) Math.round(LONGEST_SECONDS / grid.hopSeconds() * STEPS);
        peakDbfs = new double[count];
        clearness = new double[count];
        playing = new boolean[count];
        for (int i = 0; i < count; i++) {
            long hop = (first + i) / STEPS;
            playing[i] = activity.isPlaying(hop) || activity.isPlaying(hop + 1);
            peakDbfs[i] = playing[i] ? Decibels.ofAmplitude(steps.peak(first + i)) : Double.NEGATIVE_INFINITY;
        }
        onsets.forEach(onset -> clearness[(int) Math.max(0, onset.step() - ATTACK_STEPS - first)] = onset.clearness());
    }

    WeightedQuantiles quantiles() {
        double[] held = heldDbfs();
        double[] clearest = RunningMaximum.of(clearness, longest - 1, 0);
        double[] weights = new double[GRADES];
        double[] sums = new double[GRADES];
        double whole = 0;
        int playedFor = 0;
        for (int i = 0; i < count; i++) {
            playedFor = playing[i] ? playedFor + 1 : 0;
            if (held[i] > LOWEST_DBFS) {
                double weight = Math.max(clearest[i], kept(held, i, playedFor));
                int grade = (int) Math.min(GRADES - 1, (held[i] - LOWEST_DBFS) * GRADES_PER_DB);
                weights[grade] += weight;
                sums[grade] += weight * held[i];
                whole += weight;
            }
        }
        Arrays.setAll(sums, grade -> weights[grade] > 0 ? sums[grade] / weights[grade] : 0);
        return WeightedQuantiles.of(sums, weights, whole / longest);
    }

    private double[] heldDbfs() {
        double[] beyond = new double[count];
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += BEYOND_ONSET_DB * clearness[i];
            beyond[i] = sum;
        }
        double[] before = new double[count];
        double[] after = new double[count];
        for (int i = 0; i < count; i++) {
            before[i] = peakDbfs[i] + beyond[i];
            after[i] = peakDbfs[i] - beyond[i];
        }
        double[] highestBefore = RunningMaximum.of(before, longest, 0);
        double[] highestAfter = RunningMaximum.of(after, 0, longest / 2);
        double[] held = new double[count];
        Arrays.setAll(held, i -> Math.max(highestBefore[i] - beyond[i], highestAfter[i] + beyond[i]));
        return held;
    }

    /** How far the playing goes on as it was half a second ago, 0 to 1. The edge of the playing is known to a hop: of what swells, one is not counted. */
    private double kept(double[] held, int at, int playedFor) {
        if (playedFor <= STEPS) {
            return 0;
        }
        double before = at < longest ? Double.NEGATIVE_INFINITY : held[at - longest];
        return Math.max(0, Math.min(1, 1 - (before - held[at]) / SUNK_DB));
    }
}
