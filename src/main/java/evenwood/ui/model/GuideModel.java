package evenwood.ui.model;

import evenwood.coach.GuidedCheck;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The guided check as the window shows it. Thread: the screen's. */
public final class GuideModel {
    /**
     * @param steps  the four, in order
     * @param asking what to do now
     * @param paused whether nothing counts
     * @param over   whether everything was heard
     */
    public record Picture(List<StepLine> steps, String asking, boolean paused, boolean over) { }

    private GuidedCheck check = new GuidedCheck();
    private Optional<GuidedCheck.Progress> progress = Optional.empty();
    private Object counted;
    private boolean begun;

    public void begin() {
        begun = true;
        check = new GuidedCheck();
        progress = Optional.empty();
        counted = null;
    }

    /** Something else is done with the sound now. */
    public void leave() {
        begun = false;
    }

    /** Counts anew when the slow readings are new; in between nothing can have been done. */
    public void hear(Now now) {
        Optional<TakeReadings> readings = now.readings();
        if (now.isLive() && readings.isPresent() && readings.get().activity() != counted) {
            counted = readings.get().activity();
            progress = Optional.of(check.hear(readings.get()));
        }
    }

    public void pauseOrGoOn() {
        if (check.isPaused()) {
            check.resume();
        } else {
            check.pause();
        }
        counted = null;
    }

    public void redo(GuidedCheck.Step step) {
        check.redo(step);
        counted = null;
    }

    /** The step asked for, once more. */
    public void redo() {
        redo(check.step());
    }

    public void skip() {
        check.skip();
        counted = null;
    }

    public boolean isBegun() {
        return begun;
    }

    /** Whether something is asked for just now. */
    public boolean isOn() {
        return begun && !isOver();
    }

    /** What is asked for just now. */
    public Optional<GuidedCheck.Step> asked() {
        return isOn() && !check.isPaused() ? Optional.of(check.step()) : Optional.empty();
    }

    public boolean isOver() {
        return check.step() == GuidedCheck.Step.DONE;
    }

    public Picture picture(Words words) {
        List<StepLine> steps = new ArrayList<>();
        for (GuidedCheck.Step step : GuidedCheck.Step.values()) {
            if (step != GuidedCheck.Step.DONE) {
                int order = step.compareTo(check.step());
                double done = order < 0 ? 1 : order > 0 ? 0 : progress.filter(each -> each.step() == step).map(GuidedCheck.Progress::done).orElse(0.0);
                steps.add(new StepLine(words.say("guide." + step.name().toLowerCase(java.util.Locale.ROOT)),
                    order < 0 ? StepLine.Standing.DONE : order == 0 ? StepLine.Standing.NOW : StepLine.Standing.LATER, done));
            }
        }
        String asking = check.isPaused() ? words.say("guide.paused")
            : progress.filter(each -> each.step() == check.step()).map(each -> words.say(each.asking()))
                .orElseGet(() -> words.say("guide.first." + check.step().name().toLowerCase(java.util.Locale.ROOT)));
        return new Picture(steps, asking, check.isPaused(), isOver());
    }
}
