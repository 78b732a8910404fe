package evenwood.ui.paint;

import evenwood.report.HuntPicture;
import evenwood.ui.model.NoiseBars;
import java.util.List;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** Hum, buzz, hiss and tones as bars, before over after, each with a whisker for how sure it is. */
public final class NoiseBarsPainter {
    private static final double LOWEST_DBFS = -110;
    private static final double HIGHEST_DBFS = -20;
    private static final double STEP_DB = 20;
    private final Ink ink;
    private final String before;
    private final String after;
    private final java.util.function.DoubleFunction<String> level;

    /** @param before word for the upper bars  @param after word for the lower ones  @param level a level with its unit */
    public NoiseBarsPainter(Ink ink, String before, String after, java.util.function.DoubleFunction<String> level) {
        this.ink = ink;
        this.before = before;
        this.after = after;
        this.level = level;
    }

    /** @param bars those of {@code after} with one thing changed, if anything was tried */
    public void paint(GraphicsContext g, double width, double height, NoiseBars bars) {
        List<HuntPicture.Bar> was = bars.before();
        List<HuntPicture.Bar> now = bars.after();
        double em = ink.em();
        double left = em * 0.4;
        double right = width - em * 10;
        double row = (height - em * 1.6) / was.size();
        g.setLineWidth(1);
        for (double db = LOWEST_DBFS + 10; db <= HIGHEST_DBFS; db += STEP_DB) {
            double x = x(db, left, right);
            g.setStroke(ink.line());
            g.strokeLine(x, 0, x, height - em * 1.5);
            ink.write(g, level.apply(db), x, height - em * 0.7, TextAlignment.CENTER, 0.78, false, ink.faint());
        }
        for (int i = 0; i < was.size(); i++) {
            double y = i * row;
            String name = was.get(i).word().substring(0, 1).toUpperCase(java.util.Locale.ROOT) + was.get(i).word().substring(1);
            ink.write(g, name, left, y + em * 0.8, TextAlignment.LEFT, 1, true, ink.text());
            double thick = Math.min(em * 1.1, (row - em * 1.9) / 2);
            bar(g, was.get(i), left, right, y + em * 1.5, thick, now.isEmpty() ? ink.heard() : ink.faint(), now.isEmpty() ? "" : before);
            if (!now.isEmpty()) {
                bar(g, now.get(i), left, right, y + em * 1.6 + thick, thick, ink.heard(), after);
            }
        }
    }

    private void bar(GraphicsContext g, HuntPicture.Bar bar, double left, double right, double y, double thick, Color colour, String word) {
        double em = ink.em();
        double end = x(bar.levelDbfs(), left, right);
        g.setFill(ink.trough());
        g.fillRect(left, y, right - left, thick);
        g.setFill(colour);
        g.fillRect(left, y, Math.max(2, end - left), thick);
        g.setStroke(ink.text());
        g.setLineWidth(Math.max(1.5, em * 0.12));
        double from = x(bar.levelDbfs() - bar.halfWidthDb(), left, right);
        double to = x(bar.levelDbfs() + bar.halfWidthDb(), left, right);
        g.strokeLine(from, y + thick / 2, to, y + thick / 2);
        g.strokeLine(from, y + thick * 0.2, from, y + thick * 0.8);
        g.strokeLine(to, y + thick * 0.2, to, y + thick * 0.8);
        ink.write(g, word.isEmpty() ? level.apply(bar.levelDbfs()) : word + " " + level.apply(bar.levelDbfs()), right + em * 0.5, y + thick / 2, TextAlignment.LEFT, 0.85, false, ink.text());
    }

    private static double x(double dbfs, double left, double right) {
        return left + Math.max(0, Math.min(1, (dbfs - LOWEST_DBFS) / (HIGHEST_DBFS - LOWEST_DBFS))) * (right - left);
    }
}
