package evenwood.ui.paint;

import evenwood.ui.model.MoveCard;
import evenwood.ui.scale.DialArc;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.ArcType;
import javafx.scene.shape.StrokeLineCap;
import javafx.scene.text.TextAlignment;

/** A control at two places: faint where it stands, full where it should go, and the way between. */
public final class DialPainter {
    private static final int KNOB_MARKS = 10;
    private static final double STOP_EMS = 0.8;
    private final Ink ink;

    public DialPainter(Ink ink) {
        this.ink = ink;
    }

    public void paint(GraphicsContext g, double width, double height, MoveCard card) {
        paint(g, width, height, card.shape(), card.fromPart(), card.toPart());
    }

    /** @param fromPart equal to toPart for a control that only shows where it stands */
    public void paint(GraphicsContext g, double width, double height, MoveCard.Shape shape, double fromPart, double toPart) {
        switch (shape) {
            case KNOB, TURN -> knob(g, width, height, shape == MoveCard.Shape.KNOB, fromPart, toPart);
            case FADER -> fader(g, width, height, fromPart, toPart);
            case SWITCH -> toggle(g, width, height, fromPart, toPart);
        }
    }

    /** Writes what the two stops are marked with, beside them. */
    public void stops(GraphicsContext g, double width, double height, MoveCard.Shape shape, String least, String most) {
        double em = ink.em();
        if (shape == MoveCard.Shape.FADER) {
            double x = width / 2 + Math.min(width * 0.5, em * 2.6) / 2 + em * 0.3;
            ink.write(g, most, x, em * 0.8, TextAlignment.LEFT, STOP_EMS, false, ink.faint());
            ink.write(g, least, x, height - em * 0.8, TextAlignment.LEFT, STOP_EMS, false, ink.faint());
        } else {
            double y = height - em * 0.5;
            double radius = Math.min(width, height) * 0.3;
            ink.write(g, least, width / 2 - radius * 1.1, y, TextAlignment.CENTER, STOP_EMS, false, ink.faint());
            ink.write(g, most, width / 2 + radius * 1.1, y, TextAlignment.CENTER, STOP_EMS, false, ink.faint());
        }
    }

    private void knob(GraphicsContext g, double width, double height, boolean marked, double from, double to) {
        double radius = Math.min(width, height) * 0.3;
        double x = width / 2;
        double y = height / 2 + radius * 0.12;
        if (marked) {
            g.setStroke(ink.faint());
            g.setLineWidth(1.5);
            for (int mark = 0; mark <= KNOB_MARKS; mark++) {
                ray(g, x, y, radius * 1.1, radius * (mark % 5 == 0 ? 1.3 : 1.2), mark / (double) KNOB_MARKS);
            }
        }
        g.setFill(ink.trough());
        g.fillOval(x - radius, y - radius, 2 * radius, 2 * radius);
        g.setStroke(ink.faint());
        g.setLineWidth(1.5);
        g.strokeOval(x - radius, y - radius, 2 * radius, 2 * radius);
        if (from != to) {
            arc(g, x, y, radius * (marked ? 1.5 : 1.24), from, to);
            g.setStroke(ink.faint());
            g.setLineWidth(2);
            g.setLineDashes(3, 3);
            ray(g, x, y, radius * 0.2, radius * 0.92, from);
            g.setLineDashes();
        }
        g.setStroke(ink.heard());
        g.setLineWidth(Math.max(3, radius * 0.13));
        g.setLineCap(StrokeLineCap.ROUND);
        ray(g, x, y, radius * 0.25, radius * 0.88, to);
        g.setLineCap(StrokeLineCap.BUTT);
    }

    private void arc(GraphicsContext g, double x, double y, double radius, double from, double to) {
        Color way = ink.clear();
        g.setStroke(way);
        g.setLineWidth(Math.max(3, radius * 0.14));
        double start = 90 - DialArc.degrees(from);
        double end = 90 - DialArc.degrees(to);
        g.strokeArc(x - radius, y - radius, 2 * radius, 2 * radius, start, end - start, ArcType.OPEN);
        double angle = Math.toRadians(DialArc.degrees(to));
        double direction = to > from ? 1 : -1;
        head(g, x + Math.sin(angle) * radius, y - Math.cos(angle) * radius, Math.cos(angle) * direction, Math.sin(angle) * direction, radius * 0.3, way);
    }

    /** An arrow's head whose tip lies ahead of a point in a direction. */
    private static void head(GraphicsContext g, double x, double y, double dx, double dy, double size, Color colour) {
        g.setFill(colour);
        g.fillPolygon(new double[] {x + dx * size, x - dy * size * 0.75, x + dy * size * 0.75},
            new double[] {y + dy * size, y + dx * size * 0.75, y - dx * size * 0.75}, 3);
    }

    private static void ray(GraphicsContext g, double x, double y, double inner, double outer, double part) {
        double angle = Math.toRadians(DialArc.degrees(part));
        g.strokeLine(x + Math.sin(angle) * inner, y - Math.cos(angle) * inner, x + Math.sin(angle) * outer, y - Math.cos(angle) * outer);
    }

    private void fader(GraphicsContext g, double width, double height, double from, double to) {
        double em = ink.em();
        double top = em * 0.8;
        double bottom = height - em * 0.8;
        double x = width / 2;
        double cap = Math.min(width * 0.5, em * 2.6);
        g.setStroke(ink.faint());
        g.setLineWidth(1);
        for (int mark = 0; mark <= 6; mark++) {
            double y = bottom - mark / 6.0 * (bottom - top);
            double half = mark == 3 ? cap * 0.62 : cap * 0.45;
            g.strokeLine(x - half, y, x + half, y);
        }
        g.setFill(ink.trough());
        g.fillRoundRect(x - em * 0.22, top, em * 0.44, bottom - top, em * 0.4, em * 0.4);
        g.strokeRoundRect(x - em * 0.22, top, em * 0.44, bottom - top, em * 0.4, em * 0.4);
        double yTo = bottom - to * (bottom - top);
        if (from != to) {
            double yFrom = bottom - from * (bottom - top);
            g.setStroke(ink.faint());
            g.setLineDashes(3, 3);
            g.setLineWidth(1.5);
            g.strokeRoundRect(x - cap / 2, yFrom - em * 0.32, cap, em * 0.64, em * 0.3, em * 0.3);
            g.setLineDashes();
            double arrow = x + cap / 2 + em * 0.45;
            double direction = to > from ? -1 : 1;
            g.setStroke(ink.clear());
            g.setLineWidth(Math.max(3, em * 0.2));
            g.strokeLine(arrow, yFrom, arrow, yTo - direction * em * 0.5);
            head(g, arrow, yTo - direction * em * 0.55, 0, direction, em * 0.55, ink.clear());
        }
        g.setFill(ink.heard());
        g.fillRoundRect(x - cap / 2, yTo - em * 0.34, cap, em * 0.68, em * 0.3, em * 0.3);
        g.setStroke(ink.sheet());
        g.setLineWidth(2);
        g.strokeLine(x - cap * 0.35, yTo, x + cap * 0.35, yTo);
    }

    private void toggle(GraphicsContext g, double width, double height, double from, double to) {
        double em = ink.em();
        double long1 = Math.min(width * 0.62, em * 4);
        double tall = long1 * 0.5;
        double x = (width - long1) / 2;
        double y = (height - tall) / 2;
        g.setFill(to > 0.5 ? ink.heard() : ink.trough());
        g.fillRoundRect(x, y, long1, tall, tall, tall);
        g.setStroke(ink.faint());
        g.setLineWidth(1.5);
        g.strokeRoundRect(x, y, long1, tall, tall, tall);
        double knob = tall * 0.76;
        if (from != to) {
            g.setStroke(ink.faint());
            g.setLineDashes(3, 3);
            g.strokeOval(x + tall * 0.12 + from * (long1 - tall), y + tall * 0.12, knob, knob);
            g.setLineDashes();
        }
        g.setFill(ink.sheet());
        g.fillOval(x + tall * 0.12 + to * (long1 - tall), y + tall * 0.12, knob, knob);
        g.strokeOval(x + tall * 0.12 + to * (long1 - tall), y + tall * 0.12, knob, knob);
    }
}
