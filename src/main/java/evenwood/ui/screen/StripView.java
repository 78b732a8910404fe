package evenwood.ui.screen;

import evenwood.ui.model.StripHistory;
import evenwood.ui.model.StripPicture;
import evenwood.ui.paint.StripPainter;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.VBox;

/** The last minutes, read by pointing at a moment or with the left and right keys. */
final class StripView {
    private final Surroundings around;
    private final Board board;
    private final Label words = Parts.text("", "quiet");
    private final VBox node;
    private final StripPainter painter;
    private double pointedSeconds = -1;
    private long shownRevision = -1;

    StripView(Surroundings around) {
        this.around = around;
        double em = around.ink().em();
        board = new Board(em * 20, em * 7);
        painter = new StripPainter(around.ink(), around.words()::clock);
        board.setOnMouseMoved(event -> point(event.getX()));
        board.setOnMouseDragged(event -> point(event.getX()));
        board.setOnMouseExited(event -> point(-1));
        board.setFocusTraversable(true);
        board.setOnKeyPressed(this::scrub);
        node = Parts.sheet(around.words().say("strip.title"), board, words);
    }

    VBox node() {
        return node;
    }

    /** Nothing is done when the moments are those shown already. */
    void show() {
        if (around.take().strip().revision() != shownRevision) {
            paint();
        }
    }

    private List<StripHistory.Moment> moments() {
        return around.take().strip().moments();
    }

    private void paint() {
        shownRevision = around.take().strip().revision();
        StripPicture picture = StripPicture.of(moments(), pointedSeconds, around.words());
        board.saying(picture.caption());
        board.paint((g, width, height) -> painter.paint(g, width, height, picture));
        words.setText(picture.caption());
    }

    private void point(double x) {
        StripPicture picture = StripPicture.of(moments(), -1, around.words());
        double left = painter.left();
        pointedSeconds = x < 0 ? -1 : picture.time().seconds((x - left) / (painter.right(board.getWidth()) - left));
        paint();
    }

    private void scrub(KeyEvent event) {
        double step = switch (event.getCode()) {
            case LEFT -> -1;
            case RIGHT -> 1;
            default -> 0;
        };
        if (step != 0) {
            List<StripHistory.Moment> moments = moments();
            double end = moments.isEmpty() ? 0 : moments.get(moments.size() - 1).seconds();
            pointedSeconds = Math.max(0, Math.min(end, (pointedSeconds < 0 ? end : pointedSeconds) + step));
            paint();
            event.consume();
        }
    }
}
