package evenwood.ui.paint;

import evenwood.judge.Severity;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;

/** How much a finding matters, as a shape: three bars of rising height, as many of them filled as it is grave. */
public final class SeverityMark {
    private static final int BARS = 3;

    private SeverityMark() { }

    public static double width(Ink ink) {
        return ink.em() * 0.95;
    }

    /** @param x left edge  @param middle its middle's height */
    public static void paint(GraphicsContext g, Ink ink, Severity severity, double x, double middle) {
        double em = ink.em();
        for (int bar = 0; bar < BARS; bar++) {
            double height = em * (0.35 + 0.2 * bar);
            double left = x + bar * em * 0.33;
            double top = middle + em * 0.38 - height;
            if (bar <= severity.ordinal()) {
                g.setFill(colour(ink, severity));
                g.fillRect(left, top, em * 0.24, height);
            } else {
                g.setStroke(ink.faint());
                g.setLineWidth(1);
                g.strokeRect(left + 0.5, top + 0.5, em * 0.24 - 1, height - 1);
            }
        }
    }

    public static Color colour(Ink ink, Severity severity) {
        return switch (severity) {
            case STRONG -> ink.strong();
            case CLEAR -> ink.clear();
            case SLIGHT -> ink.heard();
        };
    }
}
