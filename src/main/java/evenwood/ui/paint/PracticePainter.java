package evenwood.ui.paint;

import evenwood.ui.model.PracticePicture;
import java.util.function.IntFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.text.TextAlignment;

/** A bar for each of the last days, as long as it was played; a day without is just a mark on the line. */
public final class PracticePainter {
    private static final int[] STEPS = {5, 10, 20, 30, 60, 120, 240};
    private static final double LEAST_MINUTES = 10;
    private final Ink ink;
    private final IntFunction<String> minutes;

    /** @param minutes so many, with their unit */
    public PracticePainter(Ink ink, IntFunction<String> minutes) {
        this.ink = ink;
        this.minutes = minutes;
    }

    public void paint(GraphicsContext g, double width, double height, PracticePicture practice) {
        double em = ink.em();
        double most = Math.max(LEAST_MINUTES, practice.minutes().stream().mapToDouble(Double::doubleValue).max().orElse(0) * 1.1);
        int step = STEPS[0];
        for (int next : STEPS) {
            step = next;
            if (most / next <= 4) {
                break;
            }
        }
        double left = ink.width(minutes.apply((int) most), 0.8, false) + em * 0.6;
        double right = width - em * 0.4;
        double top = em * 0.6;
        double bottom = height - em * 1.8;
        g.setLineWidth(1);
        for (int tick = 0; tick <= most; tick += step) {
            double y = Math.round(bottom - tick / most * (bottom - top)) + 0.5;
            g.setStroke(ink.line());
            g.strokeLine(left, y, right, y);
            ink.write(g, minutes.apply(tick), left - em * 0.4, y, TextAlignment.RIGHT, 0.8, false, ink.faint());
        }
        double each = (right - left) / practice.minutes().size();
        for (int day = 0; day < practice.minutes().size(); day++) {
            double tall = practice.minutes().get(day) / most * (bottom - top);
            double x = left + day * each + each * 0.18;
            g.setFill(tall > 0 ? ink.heard() : ink.line());
            g.fillRoundRect(x, bottom - Math.max(tall, 2), each * 0.64, Math.max(tall, 2), em * 0.2, em * 0.2);
        }
        ink.write(g, practice.from(), left, bottom + em, TextAlignment.LEFT, 0.85, false, ink.faint());
        ink.write(g, practice.to(), right, bottom + em, TextAlignment.RIGHT, 0.85, false, ink.faint());
    }
}
