package evenwood.ui.screen;

import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.layout.Region;

/** A picture that fills its place; painted anew only when it is told that it changed or when its size did. */
final class Board extends Region {
    /** Draws everything on a cleared canvas. */
    interface Painting {
        void paint(GraphicsContext g, double width, double height);
    }

    private final Canvas canvas = new Canvas();
    private Painting painting = (g, width, height) -> { };
    private boolean stale = true;
    private Object shown;

    Board(double minWidthPx, double minHeightPx) {
        getChildren().add(canvas);
        setMinSize(minWidthPx, minHeightPx);
        setPrefSize(minWidthPx, minHeightPx);
        canvas.setManaged(false);
    }

    /** From now on it shows this; drawn with the next frame. */
    void paint(Painting next) {
        painting = next;
        stale = true;
        requestLayout();
    }

    /** The same, but only when what is drawn is another than before: most moments change only some of the pictures. */
    void paint(Object picture, String says, Painting next) {
        if (!picture.equals(shown)) {
            shown = picture;
            setAccessibleText(says);
            paint(next);
        }
    }

    /** For screen readers. */
    Board saying(String words) {
        setAccessibleText(words);
        return this;
    }

    @Override
    protected void layoutChildren() {
        double width = Math.floor(getWidth());
        double height = Math.floor(getHeight());
        if (canvas.getWidth() != width || canvas.getHeight() != height) {
            canvas.setWidth(width);
            canvas.setHeight(height);
            stale = true;
        }
        if (stale && width > 0 && height > 0) {
            stale = false;
            GraphicsContext g = canvas.getGraphicsContext2D();
            g.clearRect(0, 0, width, height);
            painting.paint(g, width, height);
        }
    }
}
