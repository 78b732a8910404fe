package evenwood.ui.paint;

import evenwood.ui.model.TunerPicture;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The note's name and, beneath, a ruler of fifty cents either way with a marker where it stands. */
public final class TunerPainter {
    private static final int HALF_RANGE_CENTS = 50;
    private static final int TICK_CENTS = 10;
    private final Ink ink;

    public TunerPainter(Ink ink) {
        this.ink = ink;
    }

    public void paint(GraphicsContext g, double width, double height, TunerPicture tuner) {
        double em = ink.em();
        double unit = Math.min(height / 5.6, width / 9);
        double name = unit * 2.4 / em;
        ink.write(g, tuner.note(), width / 2, unit * 1.5, TextAlignment.CENTER, name, true, tuner.clear() ? ink.text() : ink.faint());
        double half = Math.min(width * 0.42, em * 9);
        double ruler = unit * 3.3;
        Color good = ink.good();
        g.setFill(Color.color(good.getRed(), good.getGreen(), good.getBlue(), 0.3));
        g.fillRect(width / 2 - half * 0.1, ruler - unit * 0.35, half * 0.2, unit * 0.7);
        g.setStroke(ink.line());
        g.setLineWidth(1.5);
        for (int cents = -HALF_RANGE_CENTS; cents <= HALF_RANGE_CENTS; cents += TICK_CENTS) {
            double x = width / 2 + half * cents / HALF_RANGE_CENTS;
            double tall = cents == 0 ? 0.35 : 0.18;
            g.strokeLine(x, ruler - unit * tall, x, ruler + unit * tall);
        }
        if (tuner.clear()) {
            double x = width / 2 + half * tuner.cents() / HALF_RANGE_CENTS;
            g.setFill(tuner.isInTune() ? ink.good() : ink.clear());
            g.fillPolygon(new double[] {x - unit * 0.3, x, x + unit * 0.3, x}, new double[] {ruler, ruler - unit * 0.42, ruler, ruler + unit * 0.42}, 4);
        }
        double size = Math.min(1, unit * 0.62 / em);
        ink.write(g, ink.fitted(tuner.words(), width - em, size, false), width / 2, unit * 4.7, TextAlignment.CENTER, size, false, ink.faint());
    }
}
