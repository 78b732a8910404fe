package evenwood.report;

import java.util.ArrayList;
import java.util.List;

/**
 * A page of marks, drawn once and written as SVG, PDF or PNG, in points (1/72 inch) from the upper left.
 *
 * @param width  of the page
 * @param height of the page
 * @param marks  in the order they are drawn
 */
record Drawing(double width, double height, List<Drawing.Mark> marks) {
    /** ISO 216 A4. */
    static final double A4_WIDTH = 595.28;
    static final double A4_HEIGHT = 841.89;
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

    Drawing(double width, double height) {
        this(width, height, new ArrayList<>());
    }

    static Drawing a4() {
        return new Drawing(A4_WIDTH, A4_HEIGHT);
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

    /** Lines over one another, centred on a point. */
    void centred(double x, double y, double size, List<String> lines) {
        double step = size + 1.5;
        for (int i = 0; i < lines.size(); i++) {
            words(x, y + size / 3 + step * (i - (lines.size() - 1) / 2.0), size, Anchor.MIDDLE, lines.get(i), BLACK);
        }
    }

    void words(double x, double y, double size, String text) {
        words(x, y, size, Anchor.START, text, BLACK);
    }

    void words(double x, double y, double size, Anchor anchor, String text, String colour) {
        marks.add(new Words(x, y, size, false, anchor, text, colour));
    }

    void heading(double x, double y, double size, String text) {
        heading(x, y, size, text, BLACK);
    }

    void heading(double x, double y, double size, String text, String colour) {
        marks.add(new Words(x, y, size, true, Anchor.START, text, colour));
    }
}
