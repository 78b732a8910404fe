package evenwood.ui.paint;

import evenwood.wiring.Fit;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;

/** How well two things fit, told by shape as well as colour: a tick, a ring with a gap, a cross, a bolt in a triangle. */
public final class FitMark {
    private FitMark() { }

    public static Color colour(Ink ink, Fit fit) {
        return switch (fit) {
            case RIGHT -> ink.good();
            case TOLERABLE -> ink.clear();
            case WRONG, DANGER -> ink.strong();
        };
    }

    /** @param x its middle  @param radius half its height */
    public static void paint(GraphicsContext g, Ink ink, Fit fit, double x, double y, double radius) {
        g.setFill(ink.sheet());
        g.fillOval(x - radius * 1.15, y - radius * 1.15, radius * 2.3, radius * 2.3);
        g.setStroke(colour(ink, fit));
        g.setLineWidth(Math.max(2, radius * 0.28));
        g.setLineDashes();
        switch (fit) {
            case RIGHT -> {
                g.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
                g.strokePolyline(new double[] {x - radius * 0.45, x - radius * 0.1, x + radius * 0.5}, new double[] {y, y + radius * 0.4, y - radius * 0.4}, 3);
            }
            case TOLERABLE -> {
                g.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
                g.strokeLine(x, y - radius * 0.55, x, y + radius * 0.1);
                g.strokeLine(x, y + radius * 0.5, x, y + radius * 0.52);
            }
            case WRONG -> {
                g.setFill(colour(ink, fit));
                g.fillOval(x - radius, y - radius, 2 * radius, 2 * radius);
                g.setStroke(ink.sheet());
                g.strokeLine(x - radius * 0.4, y - radius * 0.4, x + radius * 0.4, y + radius * 0.4);
                g.strokeLine(x - radius * 0.4, y + radius * 0.4, x + radius * 0.4, y - radius * 0.4);
            }
            case DANGER -> {
                g.setFill(colour(ink, fit));
                g.fillPolygon(new double[] {x, x + radius * 1.25, x - radius * 1.25}, new double[] {y - radius * 1.2, y + radius, y + radius}, 3);
                g.setStroke(ink.sheet());
                g.strokeLine(x, y - radius * 0.45, x, y + radius * 0.25);
                g.strokeLine(x, y + radius * 0.65, x, y + radius * 0.67);
            }
            default -> throw new IllegalArgumentException("fit mark: fit=" + fit + ", but it has no shape; draw one");
        }
    }
}
