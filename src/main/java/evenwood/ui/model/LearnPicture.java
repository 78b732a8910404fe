package evenwood.ui.model;

import evenwood.coach.GuidedCheck;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How learning a control stands, in the player's words.
 *
 * @param stage  what goes on
 * @param steps  the positions
 * @param asking what to do now
 * @param note   what to know besides; empty for nothing
 * @param set    where the control should stand; empty unless it should be set now
 * @param louder whether that could be louder than it was
 * @param stands where it stands now and stood before; empty while nothing was turned
 * @param curves what was learned; empty before
 */
public record LearnPicture(LearnModel.Stage stage, List<StepLine> steps, String asking, String note, Optional<Setting> set,
                           boolean louder, String stands, Optional<LearnedPicture> curves) {
    static LearnPicture of(LearnModel.Stage stage, LearnModel.Note note, List<StepLine> steps, Optional<Setting> asked,
                           Optional<Setting> stoodAt, Optional<GuidedCheck.Progress> progress, Optional<LearnedControl> learned, RigModel rig, Words words) {
        boolean toSet = stage == LearnModel.Stage.SET && steps.stream().anyMatch(step -> step.standing() == StepLine.Standing.NOW);
        String asking = switch (stage) {
            case CHOOSE -> words.say(rig.tap() == Tap.PICKUP ? "learn.at-pickup" : "learn.words");
            case SET -> toSet ? words.say("learn.set", asked.orElseThrow().control().name(), Positions.say(asked.orElseThrow().say(), words)) : words.say("learn.all-heard");
            case HEAR -> words.say("learn.play", secondsLeft(progress));
            case WORK -> words.say("learn.working");
            case SHOW -> "";
        };
        double lowestHz = rig.rig().map(each -> each.instrument().lowestHz()).orElse(0.0);
        return new LearnPicture(stage, steps, asking, say(note, rig, words), toSet ? asked : Optional.empty(),
            toSet && asked.orElseThrow().gainDb() > stoodAt.orElseThrow().gainDb(), stage == LearnModel.Stage.SHOW && stoodAt.isPresent() ? stands(asked.orElseThrow(), stoodAt.get(), words) : "",
            stage == LearnModel.Stage.SHOW ? learned.map(each -> LearnedPicture.of(each, lowestHz, words)) : Optional.empty());
    }

    private static String stands(Setting now, Setting before, Words words) {
        return now.equals(before) ? "" : words.say("learn.stands", now.control().name(), Positions.say(now.say(), words), Positions.say(before.say(), words));
    }

    private static double secondsLeft(Optional<GuidedCheck.Progress> progress) {
        return progress.map(each -> (1 - each.done()) * GuidedCheck.PLAY_SECONDS).orElse(GuidedCheck.PLAY_SECONDS);
    }

    private static String say(LearnModel.Note note, RigModel rig, Words words) {
        return note == LearnModel.Note.NONE ? ""
            : words.say("learn.note." + note.name().toLowerCase(Locale.ROOT).replace('_', '-'), LearnedFile.beside(rig.file()).toString());
    }
}
