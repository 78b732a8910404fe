package evenwood.ui.paint;

import evenwood.ui.model.TonePicture.Point;
import evenwood.ui.scale.FrequencyScale;
import evenwood.ui.scale.LevelScale;
import java.util.List;
import java.util.function.IntFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Curves in decibels over frequency: where they lie on a picture, their axes, lines and bands. */
final class CurveFrame {
    private static final FrequencyScale AXIS = FrequencyScale.INSTRUMENTS;
    private static final double NARROW_EMS = 32;
    private final GraphicsContext g;
    private final Ink ink;
    private final double left;
    private final double right;
    private final double top;
    private final double bottom;
    private final LevelScale scale;

    CurveFrame(GraphicsContext g, Ink ink, double width, double height, double top, LevelScale scale) {
        this.g = g;
        this.ink = ink;
        left = left(ink);
        right = right(ink, width);
        this.top = top;
        bottom = height - ink.em() * 1.7;
        this.scale = scale;
    }

    static double left(Ink ink) {
        return ink.em() * 3.6;
    }

    static double right(Ink ink, double width) {
        return width - ink.em() * 0.6;
    }

    static double x(double hz, double left, double right) {
        return left + AXIS.part(hz) * (right - left);
    }

    double x(double hz) {
        return x(hz, left, right);
    }

    double y(double db) {
        return bottom - scale.part(db) * (bottom - top);
    }

    double bottom() {
        return bottom;
    }

    /** @param frequencyWords a tick's frequency with its unit  @param unit stands behind each level, so many dB apart */
    void grid(IntFunction<String> frequencyWords, String unit, int apartDb) {
        double em = ink.em();
        g.setStroke(ink.line());
        g.setLineWidth(1);
        for (int hz : AXIS.ticksHz(right - left < em * NARROW_EMS)) {
            double x = Math.round(x(hz)) + 0.5;
            g.strokeLine(x, top, x, bottom);
            ink.write(g, frequencyWords.apply(hz), Math.min(x, right - em * 1.2), bottom + em * 0.95, TextAlignment.CENTER, 0.85, false, ink.faint());
        }
        for (int db : scale.ticks(apartDb)) {
            double y = Math.round(y(db)) + 0.5;
            g.strokeLine(left, y, right, y);
            ink.write(g, (db == 0 ? "0" : db > 0 ? "+" + db : "−" + -db) + unit, left - em * 0.3, y, TextAlignment.RIGHT, 0.8, false, ink.faint());
        }
    }

    /** Filled as far as each point reaches to either side. */
    void band(List<Point> points, Color colour, double opacity) {
        if (points.size() < 2) {
            return;
        }
        int count = points.size();
        double[] x = new double[2 * count];
        double[] y = new double[2 * count];
        for (int i = 0; i < count; i++) {
            Point point = points.get(i);
            x[i] = x(point.hz());
            y[i] = y(point.db() + point.eitherSideDb());
            x[2 * count - 1 - i] = x[i];
            y[2 * count - 1 - i] = y(point.db() - point.eitherSideDb());
        }
        g.setFill(Color.color(colour.getRed(), colour.getGreen(), colour.getBlue(), opacity));
        g.fillPolygon(x, y, 2 * count);
    }

    /** The upper (1) or lower (−1) edge of a band, or its middle (0). */
    void line(List<Point> points, int side, Color colour, double thick, double... dashes) {
        if (points.size() < 2) {
            return;
        }
        g.setStroke(colour);
        g.setLineWidth(thick);
        g.setLineDashes(dashes);
        g.beginPath();
        for (int i = 0; i < points.size(); i++) {
            double x = x(points.get(i).hz());
            double y = y(points.get(i).db() + side * points.get(i).eitherSideDb());
            if (i == 0) {
                g.moveTo(x, y);
            } else {
                g.lineTo(x, y);
            }
        }
        g.stroke();
        g.setLineDashes();
    }
}
