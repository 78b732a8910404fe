package evenwood.ui.model;

import evenwood.coach.GuidedCheck;
import evenwood.eq.ControlLearning;
import evenwood.eq.EqChain;
import evenwood.judge.Fault;
import evenwood.live.LiveState;
import evenwood.measure.TakeReadings;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.PresetProblem;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Leads the player through learning a control: set it, play, set it otherwise, play again, until its curve is known.
 *
 * <p>How: a take at each position, and enough is heard by the same rule as the guided check's last step; the curve is
 * {@link ControlLearning}'s. It is kept beside the rig and used from then on, but what the demo teaches is only shown.
 * <p>Thread: the screen's.
 */
public final class LearnModel {
    /** Where it stands: a control is chosen, set, heard; its curve is worked out, and shown. */
    public enum Stage { CHOOSE, SET, HEAR, WORK, SHOW }

    private static final int LEAST_POSITIONS = 2;

    private final RigModel rig;
    private final Later<Optional<LearnedControl>> fit = new Later<>("evenwood-learn");
    private final List<Heard> heard = new ArrayList<>();
    private Stage stage = Stage.CHOOSE;
    private List<Setting> positions = List.of();
    private Setting stoodAt;
    private GuidedCheck check = new GuidedCheck();
    private Optional<GuidedCheck.Progress> progress = Optional.empty();
    private Object counted;
    private int take = -1;
    private boolean demo;
    private Optional<LearnedControl> shown = Optional.empty();
    private Note note = Note.NONE;

    /** What the player should know besides. */
    public enum Note { NONE, BROKEN_OFF, DISTORTED, TOO_LITTLE, DEMO, KEPT, NOT_KEPT }

    private record Heard(ControlLearning.Played played, boolean distorted) { }

    public LearnModel(RigModel rig) {
        this.rig = rig;
    }

    /** The rig's controls that can be learned, those of the tone first; none at the pickup itself, where nothing that is turned is heard. */
    public List<Control> controls() {
        if (rig.tap() == Tap.PICKUP) {
            return List.of();
        }
        return rig.settings().stream().filter(setting -> LearnPositions.of(setting).size() >= LEAST_POSITIONS).map(Setting::control)
            .sorted(Comparator.comparing(control -> !control.shapesTone())).toList();
    }

    public void begin(Control control) {
        cancel();
        stoodAt = rig.settings().stream().filter(each -> each.control().equals(control)).findFirst().orElseThrow();
        positions = LearnPositions.of(stoodAt);
        stage = Stage.SET;
    }

    /** What is known of a control already. */
    public void show(LearnedControl known) {
        cancel();
        shown = Optional.of(known);
        stage = Stage.SHOW;
    }

    /** Where the control should stand now. */
    public Setting asked() {
        return positions.get(Math.min(heard.size(), positions.size() - 1));
    }

    /** The player has set it somewhere else, which does as well; not where it was heard already. */
    public void ask(Setting other) {
        List<Setting> next = new ArrayList<>(positions);
        if (heard.stream().noneMatch(each -> each.played.at().equals(other))) {
            next.set(heard.size(), other);
            positions = List.copyOf(next);
        }
    }

    /** What the demo's amp makes of the position asked for. */
    public EqChain demoControls() {
        return DemoAmp.at(stoodAt, asked());
    }

    /** The control stands where it was asked to, and a take has begun. @param takeNumber its number */
    public void listen(int takeNumber, boolean isDemo) {
        rig.set(asked());
        take = takeNumber;
        demo = isDemo || demo && !heard.isEmpty();
        check = new GuidedCheck();
        while (check.step() != GuidedCheck.Step.PLAY) {
            check.skip();
        }
        progress = Optional.empty();
        counted = null;
        note = Note.NONE;
        stage = Stage.HEAR;
    }

    /** @param takeNumber of the take that is on @return whether enough was heard and the take should end now */
    public boolean hear(Now now, int takeNumber) {
        if (stage == Stage.WORK) {
            finish();
        }
        if (stage != Stage.HEAR) {
            return false;
        }
        if (takeNumber != take || !now.problem().isEmpty()) {
            stage = Stage.SET;
            note = Note.BROKEN_OFF;
            return false;
        }
        return now.isLive() && now.readings().isPresent() && count(now, now.readings().get());
    }

    private boolean count(Now now, TakeReadings readings) {
        boolean over = now.state().orElseThrow().phase() == LiveState.Phase.STOPPED;
        boolean enough = check.step() == GuidedCheck.Step.DONE;
        if (!enough && readings.activity() != counted) {
            counted = readings.activity();
            progress = Optional.of(check.hear(readings));
        }
        if (over && enough) {
            boolean distorted = now.assessment().filter(each -> each.verdict().has(Fault.CLIPPING) || each.verdict().has(Fault.OVERDRIVEN)).isPresent();
            heard.add(new Heard(new ControlLearning.Played(asked(), readings), distorted));
            next();
        } else if (over) {
            stage = Stage.SET;
            note = Note.BROKEN_OFF;
        }
        return !over && check.step() == GuidedCheck.Step.DONE;
    }

    private void next() {
        note = heard.get(heard.size() - 1).distorted ? Note.DISTORTED : Note.NONE;
        stage = Stage.SET;
        if (heard.size() == positions.size() && note == Note.NONE) {
            learn();
        }
    }

    /** Whether the positions heard so far do. */
    public boolean isEnough() {
        return stage == Stage.SET && heard.size() >= LEAST_POSITIONS;
    }

    /** Whether there is something to be heard once more. */
    public boolean canRedo() {
        return stage == Stage.HEAR || stage == Stage.SET && !heard.isEmpty();
    }

    /** The position under way once more, or the last one that was heard. */
    public void redo() {
        if (stage == Stage.SET && !heard.isEmpty()) {
            heard.remove(heard.size() - 1);
        }
        note = Note.NONE;
        stage = Stage.SET;
        take = -1;
    }

    /** Works the curve out of what was heard. */
    public void learn() {
        Control control = stoodAt.control();
        List<ControlLearning.Played> takes = heard.stream().map(Heard::played).toList();
        stage = Stage.WORK;
        fit.ask(() -> ControlLearning.ofTakes(control, takes));
    }

    private void finish() {
        if (fit.isWaiting()) {
            return;
        }
        shown = fit.answer().value().flatMap(each -> each);
        if (shown.isEmpty()) {
            heard.clear();
            note = Note.TOO_LITTLE;
            stage = Stage.SET;
            return;
        }
        note = demo ? Note.DEMO : kept(shown.get());
        stage = Stage.SHOW;
    }

    private Note kept(LearnedControl learned) {
        try {
            rig.learn(learned);
            return Note.KEPT;
        } catch (PresetProblem unwritable) {
            return Note.NOT_KEPT;
        }
    }

    /** Leaves off; what was heard for it is forgotten. */
    public void cancel() {
        fit.drop();
        heard.clear();
        shown = Optional.empty();
        note = Note.NONE;
        demo = false;
        take = -1;
        positions = List.of();
        stoodAt = null;
        stage = Stage.CHOOSE;
    }

    public Stage stage() {
        return stage;
    }

    public LearnPicture picture(Words words) {
        return LearnPicture.of(stage, note, steps(words), positions.isEmpty() ? Optional.empty() : Optional.of(asked()), Optional.ofNullable(stoodAt), progress,
            shown, rig, words);
    }

    private List<StepLine> steps(Words words) {
        List<StepLine> steps = new ArrayList<>();
        for (int i = 0; i < positions.size(); i++) {
            StepLine.Standing standing = i < heard.size() ? StepLine.Standing.DONE : i == heard.size() ? StepLine.Standing.NOW : StepLine.Standing.LATER;
            double done = i < heard.size() ? 1 : i == heard.size() && stage == Stage.HEAR ? progress.map(GuidedCheck.Progress::done).orElse(0.0) : 0;
            steps.add(new StepLine(words.say("learn.step", Positions.say(positions.get(i).say(), words)), standing, done));
        }
        return steps;
    }
}
