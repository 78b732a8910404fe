package evenwood.ui.paint;

import evenwood.judge.TargetWindow;
import evenwood.ui.model.StripHistory;
import evenwood.ui.model.StripPicture;
import evenwood.ui.scale.LevelScale;
import java.util.List;
import java.util.function.DoubleFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The last minutes: peaks as a hilly shape, loudness as a line through it, and a bar beneath while something was wrong. */
public final class StripPainter {
    private static final LevelScale SCALE = new LevelScale(-60, 3);
    private static final int TICK_SECONDS = 60;
    private static final int SHORT_TICK_SECONDS = 15;
    private final Ink ink;
    private final DoubleFunction<String> clock;

    public StripPainter(Ink ink, DoubleFunction<String> clock) {
        this.ink = ink;
        this.clock = clock;
    }

    /** Where the time axis begins and ends, so that a pointer can be understood. */
    public double left() {
        return ink.em() * 0.6;
    }

    public double right(double width) {
        return width - ink.em() * 0.6;
    }

    public void paint(GraphicsContext g, double width, double height, StripPicture strip) {
        double em = ink.em();
        double left = left();
        double right = right(width);
        double bottom = height - em * 1.9;
        double top = em * 0.4;
        g.setFill(ink.trough());
        g.fillRect(left, top, right - left, bottom - top);
        window(g, left, right, top, bottom);
        times(g, strip, left, right, bottom);
        peaks(g, strip, left, right, top, bottom);
        loudness(g, strip, left, right, top, bottom);
        faults(g, strip, left, right, bottom);
        chosen(g, strip, left, right, top, bottom);
    }

    private void window(GraphicsContext g, double left, double right, double top, double bottom) {
        Color good = ink.good();
        g.setFill(Color.color(good.getRed(), good.getGreen(), good.getBlue(), 0.22));
        double high = y(TargetWindow.DEFAULT.highDbtp(), top, bottom);
        g.fillRect(left, high, right - left, y(TargetWindow.DEFAULT.lowDbtp(), top, bottom) - high);
    }

    private void times(GraphicsContext g, StripPicture strip, double left, double right, double bottom) {
        int step = strip.time().lengthSeconds() > 120 ? TICK_SECONDS : SHORT_TICK_SECONDS;
        double from = strip.time().fromSeconds();
        for (int tick = (int) Math.ceil(from / step); tick * step <= from + strip.time().lengthSeconds(); tick++) {
            double x = left + strip.time().part(tick * step) * (right - left);
            String words = clock.apply(tick * step);
            double half = ink.width(words, 0.85, false) / 2;
            ink.write(g, words, Math.max(left + half, Math.min(right - half, x)), bottom + ink.em() * 1.25, TextAlignment.CENTER, 0.85, false, ink.faint());
        }
    }

    private void peaks(GraphicsContext g, StripPicture strip, double left, double right, double top, double bottom) {
        List<StripHistory.Moment> moments = strip.moments();
        if (moments.size() < 2) {
            return;
        }
        int count = moments.size();
        double[] x = new double[count + 2];
        double[] y = new double[count + 2];
        for (int i = 0; i < count; i++) {
            x[i] = left + strip.time().part(moments.get(i).seconds()) * (right - left);
            y[i] = y(moments.get(i).peakDbtp(), top, bottom);
        }
        x[count] = x[count - 1];
        x[count + 1] = x[0];
        y[count] = bottom;
        y[count + 1] = bottom;
        Color heard = ink.heard();
        g.setFill(Color.color(heard.getRed(), heard.getGreen(), heard.getBlue(), 0.45));
        g.fillPolygon(x, y, count + 2);
    }

    private void loudness(GraphicsContext g, StripPicture strip, double left, double right, double top, double bottom) {
        g.setStroke(ink.text());
        g.setLineWidth(1.25);
        boolean drawing = false;
        g.beginPath();
        for (StripHistory.Moment moment : strip.moments()) {
            if (moment.lufs() <= SCALE.lowestDb()) {
                drawing = false;
                continue;
            }
            double x = left + strip.time().part(moment.seconds()) * (right - left);
            double y = y(moment.lufs(), top, bottom);
            if (drawing) {
                g.lineTo(x, y);
            } else {
                g.moveTo(x, y);
                drawing = true;
            }
        }
        g.stroke();
    }

    private void faults(GraphicsContext g, StripPicture strip, double left, double right, double bottom) {
        g.setFill(ink.strong());
        List<StripHistory.Moment> moments = strip.moments();
        for (int i = 0; i < moments.size(); i++) {
            if (!moments.get(i).faults().isEmpty()) {
                double from = left + strip.time().part(moments.get(i).seconds()) * (right - left);
                double end = i + 1 < moments.size() ? moments.get(i + 1).seconds() : moments.get(i).seconds() + StripHistory.STEP_SECONDS;
                double to = left + strip.time().part(end) * (right - left);
                g.fillRect(from, bottom + ink.em() * 0.2, Math.max(1, to - from) + 0.5, ink.em() * 0.25);
            }
        }
    }

    private void chosen(GraphicsContext g, StripPicture strip, double left, double right, double top, double bottom) {
        if (strip.chosen() < 0) {
            return;
        }
        double x = left + strip.time().part(strip.moments().get(strip.chosen()).seconds()) * (right - left);
        g.setStroke(ink.text());
        g.setLineWidth(2);
        g.strokeLine(x, top, x, bottom);
    }

    private static double y(double db, double top, double bottom) {
        return bottom - SCALE.part(db) * (bottom - top);
    }
}
