package evenwood.ui.paint;

import evenwood.ui.model.LearnedPicture;
import evenwood.ui.model.TonePicture.Point;
import evenwood.ui.scale.LevelScale;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** A control's curves as heard, with how sure they are, beside what its marking says; the position stands where a curve does most. */
public final class LearnedPainter {
    private static final int LINES_APART_DB = 6;
    /** Flatter than this, all of a curve is the same, and its word may stand anywhere. */
    private static final double LEVEL_DB = 0.5;
    private final Ink ink;
    private final IntFunction<String> frequencyWords;

    /** @param frequencyWords a tick's frequency with its unit */
    public LearnedPainter(Ink ink, IntFunction<String> frequencyWords) {
        this.ink = ink;
        this.frequencyWords = frequencyWords;
    }

    public void paint(GraphicsContext g, double width, double height, LearnedPicture learned) {
        double em = ink.em();
        CurveFrame frame = new CurveFrame(g, ink, width, height, em * 0.9, new LevelScale(-learned.topDb(), learned.topDb()));
        frame.grid(frequencyWords, learned.unit(), LINES_APART_DB);
        Color[] colours = {ink.heard(), ink.other(), ink.good(), ink.clear()};
        for (int i = 0; i < learned.curves().size(); i++) {
            LearnedPicture.Curve curve = learned.curves().get(i);
            Color colour = colours[i % colours.length];
            frame.band(curve.learned(), colour, 0.2);
            frame.line(curve.nominal(), 0, colour, Math.max(1.5, em * 0.13), em * 0.5, em * 0.35);
            frame.line(curve.learned(), 0, colour, Math.max(2, em * 0.2));
        }
        for (int i = 0; i < learned.curves().size(); i++) {
            name(g, frame, learned.curves().get(i), (i + 1.0) / (learned.curves().size() + 1), width, colours[i % colours.length]);
        }
    }

    private void name(GraphicsContext g, CurveFrame frame, LearnedPicture.Curve curve, double part, double width, Color colour) {
        double em = ink.em();
        List<Point> points = curve.learned();
        Point most = points.stream().max(Comparator.comparingDouble(point -> Math.abs(point.db()))).orElseThrow();
        boolean level = points.stream().allMatch(point -> Math.abs(point.db() - most.db()) < LEVEL_DB);
        double textWidth = ink.width(curve.position(), 1, true) + em;
        double left = CurveFrame.left(ink);
        double x = Math.max(left + em * 0.3, Math.min(CurveFrame.right(ink, width) - textWidth - em * 0.3, (level ? left + part * (CurveFrame.right(ink, width) - left) : frame.x(most.hz())) - textWidth / 2));
        double y = frame.y(most.db());
        g.setFill(ink.sheet());
        g.fillRoundRect(x, y - em * 0.75, textWidth, em * 1.5, em * 0.5, em * 0.5);
        g.setStroke(colour);
        g.setLineWidth(1.5);
        g.strokeRoundRect(x, y - em * 0.75, textWidth, em * 1.5, em * 0.5, em * 0.5);
        ink.write(g, curve.position(), x + textWidth / 2, y, TextAlignment.CENTER, 1, true, ink.text());
    }
}
