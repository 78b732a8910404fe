package evenwood.ui.screen;

import evenwood.ui.model.LevelPicture;
import evenwood.ui.model.MoveCard;
import evenwood.ui.model.Now;
import evenwood.ui.paint.StandPainter;
import java.util.List;
import java.util.Optional;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;

/** Everything two metres away must know: how loud, whether that is right, and the next thing to turn. */
final class StandView {
    private final StackPane node = new StackPane();
    private final Board board = new Board(100, 100);
    private final Surroundings around;
    private final StandPainter painter;

    StandView(Surroundings around, Runnable leave) {
        this.around = around;
        painter = new StandPainter(around.ink(), around.words().say("stand.leave"));
        node.getStyleClass().add("stand");
        node.getChildren().add(board);
        node.setVisible(false);
        node.setOnMouseClicked(event -> leave.run());
    }

    Region node() {
        return node;
    }

    boolean isVisible() {
        return node.isVisible();
    }

    void setVisible(boolean visible) {
        node.setVisible(visible);
    }

    /** @param asking what the player is asked for just now; otherwise the first thing to turn is told */
    void show(Now now, Optional<String> asking) {
        LevelPicture level = LevelPicture.of(now, around.words());
        Optional<MoveCard> first = now.assessment().flatMap(each -> each.moves().stream().findFirst())
            .map(move -> MoveCard.of(move, around.rig().rig(), around.words()));
        String todo = asking.orElseGet(() -> first.map(card -> around.words().say("stand.move", card.control(), card.action())).orElse(""));
        board.paint(List.of(level, todo), level.verdict() + " " + todo, (g, width, height) -> painter.paint(g, width, height, level, todo));
    }
}
