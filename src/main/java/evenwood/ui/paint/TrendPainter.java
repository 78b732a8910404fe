package evenwood.ui.paint;

import evenwood.ui.model.TrendPicture;
import evenwood.ui.scale.TagRows;
import java.util.function.BiFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** A dot for every take over time, a line with its name for everything that happened, a shade where something really changed. */
public final class TrendPainter {
    private static final double TICK_EMS = 2.2;
    private final Ink ink;
    private final BiFunction<Integer, String, String> number;

    /** @param number a tick and its unit in the language's own way */
    public TrendPainter(Ink ink, BiFunction<Integer, String, String> number) {
        this.ink = ink;
        this.number = number;
    }

    public void paint(GraphicsContext g, double width, double height, TrendPicture trend) {
        if (trend.isEmpty()) {
            return;
        }
        double em = ink.em();
        double left = ink.width(number.apply((int) trend.low(), trend.unit()), 0.8, false) + em * 0.7;
        double right = width - em * 0.8;
        TagRows rows = new TagRows(left, right, em * 0.4);
        var places = trend.events().stream().map(mark -> rows.place(left + mark.part() * (right - left), ink.width(mark.name(), 0.85, true) + em)).toList();
        double top = em * 0.6 + rows.rows() * em * 1.6;
        double bottom = height - em * 1.8;
        axis(g, trend, left, right, top, bottom);
        for (TrendPicture.Span span : trend.spans()) {
            Color shade = ink.clear();
            double from = left + Math.max(0, span.from()) * (right - left);
            g.setFill(Color.color(shade.getRed(), shade.getGreen(), shade.getBlue(), 0.22));
            g.fillRect(from, top, Math.max(em * 0.4, left + Math.min(1, span.to()) * (right - left) - from), bottom - top);
        }
        double radius = Math.max(2, em * (trend.dots().size() > 150 ? 0.16 : 0.26));
        g.setFill(ink.heard());
        for (TrendPicture.Dot dot : trend.dots()) {
            g.fillOval(left + dot.part() * (right - left) - radius, y(dot.value(), trend, top, bottom) - radius, 2 * radius, 2 * radius);
        }
        for (int i = 0; i < trend.events().size(); i++) {
            double x = left + trend.events().get(i).part() * (right - left);
            double y = em * 0.4 + places.get(i).row() * em * 1.6;
            g.setStroke(ink.other());
            g.setLineWidth(1.5);
            g.setLineDashes(em * 0.4, em * 0.3);
            g.strokeLine(x, y + em * 1.3, x, bottom);
            g.setLineDashes();
            ink.write(g, trend.events().get(i).name(), places.get(i).leftPx() + em * 0.5, y + em * 0.6, TextAlignment.LEFT, 0.85, true, ink.other());
        }
    }

    private void axis(GraphicsContext g, TrendPicture trend, double left, double right, double top, double bottom) {
        double em = ink.em();
        int step = 1;
        for (int next : new int[] {1, 2, 5, 10, 20, 50}) {
            step = next;
            if (next / (trend.high() - trend.low()) * (bottom - top) >= em * TICK_EMS) {
                break;
            }
        }
        g.setStroke(ink.line());
        g.setLineWidth(1);
        for (int tick = (int) Math.ceil(trend.low() / step) * step; tick <= trend.high(); tick += step) {
            double y = Math.round(y(tick, trend, top, bottom)) + 0.5;
            g.strokeLine(left, y, right, y);
            ink.write(g, number.apply(tick, trend.unit()), left - em * 0.4, y, TextAlignment.RIGHT, 0.8, false, ink.faint());
        }
        ink.write(g, trend.from(), left, bottom + em, TextAlignment.LEFT, 0.85, false, ink.faint());
        ink.write(g, trend.to(), right, bottom + em, TextAlignment.RIGHT, 0.85, false, ink.faint());
    }

    private static double y(double value, TrendPicture trend, double top, double bottom) {
        return bottom - (value - trend.low()) / (trend.high() - trend.low()) * (bottom - top);
    }
}
