package evenwood.ui.screen;

import evenwood.ui.model.MoveCard;
import evenwood.ui.model.Words;
import evenwood.ui.paint.DialPainter;
import javafx.scene.control.Button;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** One move: the player's own control at from and to, what to do, why, and the two things one can do about it. */
final class MoveCardView {
    private final HBox node;

    MoveCardView(Surroundings around, MoveCard card, Runnable done, Runnable hear, boolean canHear) {
        Words words = around.words();
        double em = around.ink().em();
        Board dial = new Board(em * 6.2, em * 6.2).saying(words.say("move.says", card.control(), card.action()));
        dial.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        dial.paint((g, width, height) -> new DialPainter(around.ink()).paint(g, width, height, card));
        FlowPane buttons = new FlowPane();
        buttons.getStyleClass().add("buttons");
        Button listen = Parts.button("move-done-" + card.order(), words.say("move.done"), done, card.order() == 1 ? new String[] {"small", "accent"} : new String[] {"small"});
        buttons.getChildren().add(listen);
        if (canHear) {
            buttons.getChildren().add(Parts.button("move-hear-" + card.order(), words.say("move.hear"), hear, "small", "flat"));
        }
        VBox text = Parts.column(Parts.text(words.say("move.title", card.order(), card.control()), "move-title"), Parts.text(card.action(), "move-action"),
            Parts.text(words.say("move.why", card.why()), "move-why"), buttons);
        Parts.grow(text);
        node = Parts.row(dial, text);
        node.getStyleClass().add("move-card");
    }

    Region node() {
        return node;
    }
}
