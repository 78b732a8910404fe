package evenwood.measure;

import evenwood.sound.Decibels;
import java.util.ArrayList;
import java.util.List;

/**
 * Cuts the playing into notes: each ends where the next begins ({@link NoteStarts}) or the playing ends.
 */
final class NoteCutter {
    private static final int STEPS = AttackSteps.STEPS_PER_HOP;
    private static final int LEVEL_FROM_STEPS = 15;
    private static final int LEVEL_TO_STEPS = 75;
    private static final int SHORTEST_STEPS = 9;
    /** A start is found up to so many steps late; what was struck there must not count as the peak of the note before. */
    private static final int ATTACK_STEPS = 3;

    private final double stepSeconds;
    private final AttackSteps steps;
    private final HopHistory pitches;
    private final ActivityReading activity;

    NoteCutter(HopGrid grid, AttackSteps steps, HopHistory pitches, ActivityReading activity) {
        stepSeconds = grid.hopSeconds() / STEPS;
        this.steps = steps;
        this.pitches = pitches;
        this.activity = activity;
    }

    List<Note> notes(long[] onsets) {
        List<Note> notes = new ArrayList<>();
        long[] starts = new NoteStarts(steps, pitches, activity).of(onsets);
        for (int i = 0; i < starts.length; i++) {
            long end = endOfPlaying(starts[i], i + 1 < starts.length ? starts[i + 1] : steps.endStepNumber());
            if (end - starts[i] >= SHORTEST_STEPS) {
                notes.add(note(starts[i], end));
            }
        }
        return notes;
    }

    private long endOfPlaying(long start, long latest) {
        long hop = start / STEPS + 2;
        while (hop * STEPS < latest && (activity.isPlaying(hop) || activity.isPlaying(hop + 1))) {
            hop++;
        }
        return Math.min(latest, hop * STEPS);
    }

    private Note note(long start, long end) {
        NotePitch pitch = NotePitch.of(pitches, start, end);
        return new Note(start * stepSeconds, end * stepSeconds, pitch.frequencyHz(), NoteName.nearest(pitch.frequencyHz()),
            pitch.clarity(), !pitch.alone(), peakDbfs(start, end), levelDbfs(start, end));
    }

    private double peakDbfs(long start, long end) {
        double peak = 0;
        for (long at = Math.max(start - ATTACK_STEPS, steps.firstStep()); at < end - ATTACK_STEPS; at++) {
            peak = Math.max(peak, steps.peak(at));
        }
        return Decibels.ofAmplitude(peak);
    }

    private double levelDbfs(long start, long end) {
        long to = Math.min(end - ATTACK_STEPS, start + LEVEL_TO_STEPS);
        long from = Math.min(start + LEVEL_FROM_STEPS, (start + to) / 2);
        double sum = 0;
        for (long at = from; at < to; at++) {
            sum += steps.meanSquare(at);
        }
        return Decibels.ofPower(sum / (to - from));
    }
}
