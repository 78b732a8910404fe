package evenwood.ui.paint;

import evenwood.ui.model.StepLine;
import java.util.List;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.TextAlignment;

/** Steps as rings that fill with what was really heard; a tick when enough was. */
public final class StepPainter {
    private final Ink ink;

    public StepPainter(Ink ink) {
        this.ink = ink;
    }

    /** @param on whether one of them is asked for just now */
    public void paint(GraphicsContext g, double width, double height, List<StepLine> steps, boolean on) {
        double em = ink.em();
        double cell = width / steps.size();
        double radius = Math.min(em * 2.6, cell * 0.3);
        double y = radius + em * 0.6;
        g.setStroke(ink.line());
        g.setLineWidth(2);
        for (int i = 1; i < steps.size(); i++) {
            g.strokeLine(cell * (i - 0.5) + radius + em * 0.4, y, cell * (i + 0.5) - radius - em * 0.4, y);
        }
        for (int i = 0; i < steps.size(); i++) {
            step(g, steps.get(i), i + 1, cell * (i + 0.5), y, radius, on, cell);
        }
    }

    private void step(GraphicsContext g, StepLine step, int number, double x, double y, double radius, boolean on, double cell) {
        double em = ink.em();
        boolean now = on && step.standing() == StepLine.Standing.NOW;
        boolean done = step.standing() == StepLine.Standing.DONE;
        g.setLineWidth(em * 0.32);
        g.setStroke(ink.trough());
        g.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
        Color full = done ? ink.good() : ink.heard();
        g.setStroke(full);
        if (step.done() > 0) {
            g.strokeArc(x - radius, y - radius, 2 * radius, 2 * radius, 90, -360 * step.done(), ArcType.OPEN);
        }
        if (done) {
            g.setLineWidth(em * 0.26);
            g.setLineCap(StrokeLineCap.ROUND);
            g.strokePolyline(new double[] {x - radius * 0.4, x - radius * 0.08, x + radius * 0.45}, new double[] {y, y + radius * 0.33, y - radius * 0.33}, 3);
            g.setLineCap(StrokeLineCap.BUTT);
        } else {
            ink.write(g, Integer.toString(number), x, y, TextAlignment.CENTER, 1.7, true, now ? ink.text() : ink.faint());
        }
        ink.write(g, ink.fitted(step.name(), cell - em * 0.4, now ? 1.15 : 1, now), x, y + radius + em * 1.25, TextAlignment.CENTER, now ? 1.15 : 1, now,
            now || done ? ink.text() : ink.faint());
    }
}
