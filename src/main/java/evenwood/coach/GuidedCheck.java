package evenwood.coach;

import evenwood.judge.Statement;
import evenwood.measure.ActivityReading;
import evenwood.measure.Note;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.hipparchus.stat.StatUtils;

/**
 * Leads a player through quiet, soft, hard and usual playing, and goes on when enough of each was really heard.
 *
 * <p>In: the newest readings of one live take, about once a second. Out: the {@link Progress} to show.
 * <p>How: only what was heard while a step was on and nothing was paused counts for it; readings may change their mind about
 * earlier moments, so every step is counted afresh each time. Hard is told from soft by the notes' peaks. A player whose
 * hardest is no 6 dB over the softest is let go on after three times the notes: the verdict says so then.
 * <p>Limits: how much is enough is our choice. What was played before a redo stays in the take.
 * <p>Thread: one owner.
 */
public final class GuidedCheck {
    public static final double QUIET_SECONDS = 4;
    public static final int NOTES = 8;
    public static final double PLAY_SECONDS = 20;
    /** Between the usual soft note and the usual hard one; the same that {@code missing.dynamics} asks for. */
    public static final double HARDER_BY_DB = 6;
    private static final int PATIENCE = 3;

    /** What the player is asked for, in this order. */
    public enum Step { QUIET, SOFT, HARD, PLAY, DONE }

    /**
     * Where the check stands.
     *
     * @param step   what is asked for now
     * @param done   how much of it was heard, 0 to 1
     * @param asking what the player should do
     * @param paused nothing counts until it goes on
     */
    public record Progress(Step step, double done, Statement asking, boolean paused) { }

    /** From and to, in seconds of the take. */
    private record Stretch(double fromSeconds, double toSeconds) {
        boolean holds(double seconds) {
            return seconds >= fromSeconds && seconds < toSeconds;
        }
    }

    private final Map<Step, List<Stretch>> heard = new EnumMap<>(Step.class);
    private Step step = Step.QUIET;
    private double stretchStartSeconds;
    private double nowSeconds;
    private boolean paused;

    public GuidedCheck() {
        for (Step each : Step.values()) {
            heard.put(each, new ArrayList<>());
        }
    }

    /** Takes the newest readings and goes to the next step when this one is done. */
    public Progress hear(TakeReadings readings) {
        nowSeconds = readings.take().durationSeconds();
        Progress progress = progress(readings);
        if (progress.done() < 1 || step == Step.DONE || paused) {
            return progress;
        }
        skip();
        return progress(readings);
    }

    /** What comes now, and until {@link #resume()}, does not count. */
    public void pause() {
        if (!paused) {
            endStretch();
            paused = true;
        }
    }

    public void resume() {
        if (paused) {
            paused = false;
            stretchStartSeconds = nowSeconds;
        }
    }

    /** Goes back to the start of this step or an earlier one and forgets what was counted from there on. */
    public void redo(Step from) {
        for (Step each : Step.values()) {
            if (each.compareTo(from) >= 0) {
                heard.get(each).clear();
            }
        }
        step = from;
        stretchStartSeconds = nowSeconds;
    }

    /** Goes on although not enough was heard. */
    public void skip() {
        if (step != Step.DONE) {
            endStretch();
            step = Step.values()[step.ordinal() + 1];
            stretchStartSeconds = nowSeconds;
        }
    }

    public Step step() {
        return step;
    }

    public boolean isPaused() {
        return paused;
    }

    private void endStretch() {
        if (!paused) {
            heard.get(step).add(new Stretch(stretchStartSeconds, nowSeconds));
        }
    }

    private List<Stretch> stretches(Step of) {
        List<Stretch> all = new ArrayList<>(heard.get(of));
        if (of == step && !paused) {
            all.add(new Stretch(stretchStartSeconds, nowSeconds));
        }
        return all;
    }

    private Progress progress(TakeReadings readings) {
        return switch (step) {
            case QUIET -> quiet(readings);
            case SOFT -> soft(readings);
            case HARD -> hard(readings);
            case PLAY -> play(readings);
            case DONE -> new Progress(Step.DONE, 1, Statement.of("guide.done"), paused);
        };
    }

    private Progress quiet(TakeReadings readings) {
        double seconds = seconds(readings.activity(), ActivityReading.QUIET);
        boolean playing = seconds(readings.activity(), ActivityReading.PLAYING) > seconds;
        return at(seconds / QUIET_SECONDS, playing ? Statement.of("guide.quiet-playing") : Statement.of("guide.quiet", QUIET_SECONDS - seconds));
    }

    private Progress soft(TakeReadings readings) {
        int notes = peaks(readings, Step.SOFT).size();
        return at((double) notes / NOTES, Statement.of("guide.soft", NOTES - notes));
    }

    private Progress hard(TakeReadings readings) {
        List<Double> hard = peaks(readings, Step.HARD);
        int notes = hard.size();
        if (notes < NOTES) {
            return at((double) notes / NOTES, Statement.of("guide.hard", NOTES - notes));
        }
        List<Double> soft = peaks(readings, Step.SOFT);
        double harderDb = soft.isEmpty() ? HARDER_BY_DB : median(hard.subList(notes - NOTES, notes)) - median(soft);
        if (harderDb >= HARDER_BY_DB || notes >= PATIENCE * NOTES) {
            return at(1, Statement.of("guide.hard", 0));
        }
        // All notes are there, only not hard enough: nearly done, never done.
        return at(Math.max(0, harderDb) / HARDER_BY_DB, Statement.of("guide.harder", Math.max(0, harderDb), HARDER_BY_DB));
    }

    private Progress play(TakeReadings readings) {
        double seconds = seconds(readings.activity(), ActivityReading.PLAYING);
        return at(seconds / PLAY_SECONDS, Statement.of("guide.play", PLAY_SECONDS - seconds));
    }

    private Progress at(double done, Statement asking) {
        return new Progress(step, Math.min(1, done), paused ? Statement.of("guide.paused") : asking, paused);
    }

    private double seconds(ActivityReading activity, byte state) {
        List<Stretch> stretches = stretches(step);
        long hops = 0;
        for (int i = 0; i < activity.states().length; i++) {
            double start = activity.grid().startSeconds(activity.firstHop() + i);
            if (activity.states()[i] == state && stretches.stream().anyMatch(each -> each.holds(start))) {
                hops++;
            }
        }
        return hops * activity.grid().hopSeconds();
    }

    /** From the weakest to the strongest. */
    private List<Double> peaks(TakeReadings readings, Step of) {
        List<Stretch> stretches = stretches(of);
        return readings.notes().notes().stream().filter(note -> stretches.stream().anyMatch(each -> each.holds(note.startSeconds())))
            .map(Note::peakDbfs).sorted().toList();
    }

    private static double median(List<Double> values) {
        return StatUtils.percentile(values.stream().mapToDouble(Double::doubleValue).toArray(), 50);
    }
}
