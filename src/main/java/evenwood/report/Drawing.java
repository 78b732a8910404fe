package evenwood.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A page of marks, drawn once and written as SVG, PDF or PNG. Millimetre paper in points (1/72 inch), from the upper left.
 *
 * @param marks in the order they are drawn
 */
record Drawing(List<Drawing.Mark> marks) {
    /** ISO 216 A4 in points. */
    static final double WIDTH = 595.28;
    static final double HEIGHT = 841.89;
    static final String BLACK = "#222222";
    static final String GREY = "#888888";
    static final String PALE = "#dddddd";
    // Okabe and Ito's colours, which colour-blind people can tell apart; a word always stands beside them.
    static final String BLUE = "#0072B2";
    static final String VERMILION = "#D55E00";

    /** Where a text begins. */
    enum Anchor { START, MIDDLE, END }

    /** One thing on the page. */
    sealed interface Mark permits Stroke, Area, Words { }

    /** A line through points. */
    record Stroke(List<double[]> points, double width, String colour, boolean dashed) implements Mark { }

    /** A closed shape: filled, and with an edge unless that colour is empty. */
    record Area(List<double[]> points, String fill, String edge) implements Mark { }

    /** @param y of the line the letters stand on */
    record Words(double x, double y, double size, boolean strong, Anchor anchor, String text, String colour) implements Mark { }

    Drawing() {
        this(new ArrayList<>());
    }

    void line(double x1, double y1, double x2, double y2, double width, String colour) {
        marks.add(new Stroke(List.of(new double[] {x1, y1}, new double[] {x2, y2}), width, colour, false));
    }

    void curve(List<double[]> points, double width, String colour, boolean dashed) {
        if (points.size() > 1) {
            marks.add(new Stroke(List.copyOf(points), width, colour, dashed));
        }
    }

    void area(List<double[]> points, String fill, String edge) {
        marks.add(new Area(List.copyOf(points), fill, edge));
    }

    void box(double x, double y, double width, double height, String fill, String edge) {
        area(List.of(new double[] {x, y}, new double[] {x + width, y}, new double[] {x + width, y + height}, new double[] {x, y + height}), fill, edge);
    }

    void circle(double x, double y, double radius, String fill, String edge) {
        List<double[]> points = new ArrayList<>();
        for (int degrees = 0; degrees < 360; degrees += 10) {
            points.add(new double[] {x + radius * Math.cos(Math.toRadians(degrees)), y + radius * Math.sin(Math.toRadians(degrees))});
        }
        area(points, fill, edge);
    }

    void words(double x, double y, double size, String text) {
        words(x, y, size, Anchor.START, text, BLACK);
    }

    void words(double x, double y, double size, Anchor anchor, String text, String colour) {
        marks.add(new Words(x, y, size, false, anchor, text, colour));
    }

    void heading(double x, double y, double size, String text) {
        marks.add(new Words(x, y, size, true, Anchor.START, text, BLACK));
    }
}
