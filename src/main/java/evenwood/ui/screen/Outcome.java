package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.ui.model.MoveCard;
import evenwood.ui.model.Now;
import evenwood.ui.model.TonePicture;
import evenwood.ui.model.ToneWords;
import evenwood.ui.model.Words;
import evenwood.ui.paint.TonePainter;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** How a check ended: what to turn, the curve before and after, what was found and what changed. */
final class Outcome {
    private static final double WIDE_EMS = 64;
    private final Surroundings around;
    private final VBox moves = Parts.column();
    private final Board tone;
    private final Hearing hearing;
    private final FindingList findings;
    private final Runnable again;
    private final VBox moveSheet;
    private final VBox toneSheet;
    private final VBox findingSheet;
    private final Label toneWords = Parts.text("", "quiet");
    private final VBox node = Parts.column();
    private final TonePainter painter;
    private Optional<Assessment> shown = Optional.empty();

    Outcome(Surroundings around, Runnable again) {
        this.around = around;
        this.again = again;
        Words words = around.words();
        tone = new Board(around.ink().em() * 20, around.ink().em() * 20);
        painter = new TonePainter(around.ink(), words::frequency);
        hearing = new Hearing(around);
        findings = new FindingList(around);
        moveSheet = Parts.sheet(words.say("moves.title"), moves, hearing.node());
        toneSheet = Parts.sheet(words.say("tone.title"), tone, toneWords);
        findingSheet = Parts.sheet("", findings.node());
        node.setId("outcome");
        node.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() > around.ink().em() * WIDE_EMS));
        arrange(false);
    }

    Region node() {
        return node;
    }

    void stop() {
        hearing.stop();
    }

    private void arrange(boolean wide) {
        VBox words = Parts.column(moveSheet, findingSheet);
        if (wide) {
            HBox row = new HBox(words, toneSheet);
            row.getStyleClass().add("row");
            words.setPrefWidth(around.ink().em() * 32);
            words.setMinWidth(around.ink().em() * 32);
            HBox.setHgrow(toneSheet, Priority.ALWAYS);
            toneSheet.setMaxHeight(Region.USE_PREF_SIZE);
            node.getChildren().setAll(row);
        } else {
            node.getChildren().setAll(moveSheet, toneSheet, findingSheet);
        }
    }

    void show(Now now, boolean visible) {
        node.setVisible(visible && now.assessment().isPresent());
        node.setManaged(node.isVisible());
        if (!node.isVisible() || now.assessment().equals(shown)) {
            return;
        }
        shown = now.assessment();
        Words words = around.words();
        Assessment assessment = shown.orElseThrow();
        moves.getChildren().clear();
        if (assessment.moves().isEmpty()) {
            moves.getChildren().add(Parts.text(words.say("moves.none"), "quiet"));
        }
        assessment.moves().forEach(move -> moves.getChildren().add(new MoveCardView(around, MoveCard.of(move, around.rig().rig(), words), again,
            () -> hearing.play(List.of(move)), MoveCard.isHeard(move)).node()));
        TonePicture picture = TonePicture.of(shown, around.take().before(), around.rig().rig(), words);
        toneWords.setText(ToneWords.of(picture, shown, words));
        tone.saying(words.say("tone.title"));
        tone.paint((g, width, height) -> painter.paint(g, width, height, picture));
        findings.show(assessment);
    }
}
