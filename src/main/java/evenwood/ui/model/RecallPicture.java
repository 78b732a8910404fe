package evenwood.ui.model;

import evenwood.coach.Recall;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.List;
import java.util.Optional;

/**
 * The checklist that sets the player's controls as they stood when a take was kept.
 *
 * @param rows  control by control, in the order sound passes them
 * @param words what the list rests on
 */
public record RecallPicture(List<Row> rows, List<String> words) {
    /**
     * @param control its name
     * @param says    "from 6 to 4½"
     * @param there   it stands there already
     * @param setting what My rig knows it as once it is turned; empty where only the next check can tell, or the controls are not in My rig
     */
    public record Row(String control, String says, boolean there, Optional<Setting> setting) { }

    /** @param present the player's controls as they stand now */
    public static RecallPicture of(Recall recall, Optional<Rig> present, Words words) {
        boolean known = recall.steps().stream().anyMatch(step -> step.from().isPresent());
        List<Row> rows = recall.steps().stream().map(step -> row(step, present, words)).toList();
        return new RecallPicture(rows, recall.translated() ? List.of(words.say("recall.translated"), words.say("recall.left", words.number(recall.leftDb(), 1)))
            : List.of(words.say(known ? "recall.same" : "recall.unknown")));
    }

    private static Row row(Recall.Step step, Optional<Rig> present, Words words) {
        Optional<Setting> setting = step.to().flatMap(to -> present.flatMap(rig -> rig.setting(step.control())).flatMap(now -> Setting.ofSaid(now.control(), to)));
        String to = step.to().map(each -> Positions.say(each, words)).orElse("");
        String says = step.to().isEmpty() ? words.say("recall.gain") : step.isThere() ? words.say("recall.stays", to)
            : step.from().map(from -> words.say("recall.turn", Positions.say(from, words), to)).orElseGet(() -> words.say("recall.to", to));
        return new Row(new JournalWords(words).control(step.control()), says, step.isThere(), setting);
    }
}
