package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.ui.model.Later;
import evenwood.ui.model.Words;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.VBox;

/** Keeps the take that is shown in the journal, once. */
final class KeepButton {
    private final Surroundings around;
    private final Words words;
    private final Button button;
    private final Label told = Parts.text("", "quiet");
    private final VBox node;
    private final Watch<Later.Answer<Long>> watch;
    private Optional<Assessment> take = Optional.empty();

    KeepButton(Surroundings around) {
        this.around = around;
        words = around.words();
        button = Parts.button("keep-take", words.say("journal.keep"), this::keep);
        node = Parts.column(button, told);
        watch = new Watch<>(around.journal().kept()::answer, this::kept);
        show(Optional.empty());
    }

    Node node() {
        return node;
    }

    /** Another take can be kept now. */
    void show(Optional<Assessment> assessment) {
        take = assessment;
        node.setVisible(take.isPresent());
        node.setManaged(take.isPresent());
        button.setDisable(false);
        told.setText("");
    }

    void opened() {
        around.journal().kept().drop();
        watch.start();
    }

    void closed() {
        watch.stop();
    }

    private void keep() {
        take.ifPresent(assessment -> {
            button.setDisable(true);
            around.journal().keep(assessment, around.rig().rig());
        });
    }

    private void kept(Later.Answer<Long> answer) {
        answer.value().ifPresent(number -> told.setText(words.say("journal.kept", number)));
        if (!answer.problem().isEmpty()) {
            told.setText(words.say("journal.problem", answer.problem()));
            button.setDisable(false);
        }
    }
}
