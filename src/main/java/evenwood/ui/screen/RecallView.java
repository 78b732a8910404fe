package evenwood.ui.screen;

import evenwood.coach.Recall;
import evenwood.journal.KeptTake;
import evenwood.ui.model.ChosenTake;
import evenwood.ui.model.Later;
import evenwood.ui.model.LikedTake;
import evenwood.ui.model.RecallPicture;
import evenwood.ui.model.Words;
import java.util.Optional;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Set it as on that night: every control from where it stands to where it stood, ticked off one by one; then a check against that take. */
final class RecallView {
    private final Surroundings around;
    private final Words words;
    private final ChosenTake chosen;
    private final VBox sheet;
    private final VBox list = Parts.column();
    private final VBox check = Parts.column();
    private final Watch<Later.Answer<Recall>> watch;
    private Optional<KeptTake> take = Optional.empty();

    RecallView(Surroundings around) {
        this.around = around;
        words = around.words();
        chosen = around.journal().chosen();
        sheet = Parts.sheet(words.say("recall.title"), list, check);
        watch = new Watch<>(chosen.recall()::answer, this::show);
    }

    VBox node() {
        return sheet;
    }

    Watch<?> watch() {
        return watch;
    }

    /** Another take is looked at; empty when none is. */
    void show(Optional<KeptTake> next) {
        take = next;
        sheet.setVisible(take.isPresent());
        sheet.setManaged(take.isPresent());
        if (take.isEmpty()) {
            return;
        }
        if (take.get().rig().map(rig -> rig.settings().isEmpty()).orElse(true)) {
            list.getChildren().setAll(Parts.text(words.say("recall.no-controls")));
        } else {
            list.getChildren().setAll(Parts.text(words.say("journal.looking"), "quiet"));
            chosen.askRecall(around.rig().inUse());
        }
        showCheck();
    }

    private void show(Later.Answer<Recall> answer) {
        if (answer.value().isEmpty()) {
            return;
        }
        RecallPicture picture = RecallPicture.of(answer.value().get(), around.rig().rig(), words);
        list.getChildren().clear();
        picture.words().forEach(line -> list.getChildren().add(Parts.text(line, "quiet")));
        GridPane rows = new GridPane();
        rows.getStyleClass().add("form");
        for (RecallPicture.Row row : picture.rows()) {
            CheckBox tick = new CheckBox(row.control());
            tick.setId("recall-" + rows.getRowCount());
            tick.setSelected(row.there());
            tick.setMinWidth(CheckBox.USE_PREF_SIZE);
            tick.setOnAction(event -> row.setting().filter(setting -> tick.isSelected()).ifPresent(setting -> {
                around.rig().set(setting);
                around.take().judgeAgain();
            }));
            var says = Parts.text(row.says(), row.there() ? "quiet" : "cure");
            rows.addRow(rows.getRowCount(), tick, says);
            GridPane.setHgrow(says, Priority.ALWAYS);
        }
        list.getChildren().add(rows);
    }

    private void showCheck() {
        boolean played = take.get().assessment().readings().hasPlaying();
        long number = take.get().line().id();
        Button begin = Parts.button("recall-check", words.say("recall.check"), () -> {
            around.take().like(Optional.of(new LikedTake(number, take.get().assessment().readings())));
            around.open().accept(around.take().now().choice().isPresent() ? "play" : "source");
        }, "accent");
        begin.setDisable(!played);
        FlowPane row = new FlowPane(begin);
        row.getStyleClass().add("buttons");
        check.getChildren().setAll(Parts.text(words.say(played ? "recall.then" : "recall.silent"), "quiet"), row);
    }
}
