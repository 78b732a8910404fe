package evenwood.ui.paint;

import evenwood.ui.model.LevelPicture;
import evenwood.ui.scale.LevelScale;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The level, its verdict and the next move, as large as the window allows. */
public final class StandPainter {
    private static final LevelScale SCALE = new LevelScale(-48, 0);
    private final Ink ink;
    private final String leave;

    /** @param leave how to get back */
    public StandPainter(Ink ink, String leave) {
        this.ink = ink;
        this.leave = leave;
    }

    public void paint(GraphicsContext g, double width, double height, LevelPicture level, String todo) {
        double gap = Math.min(width, height) * 0.04;
        double bar = height * 0.22;
        bar(g, gap, gap, width - 2 * gap, bar, level);
        double room = width - 2 * gap;
        aim(g, gap, gap + bar, room, height * 0.05, level);
        one(g, level.peakName(), room, gap + bar + height * 0.08, height * 0.055, false, ink.faint());
        one(g, level.peakText(), room, gap + bar + height * 0.185, height * 0.19, true, ink.text());
        one(g, level.verdict(), room, gap + bar + height * 0.34, height * 0.13, true, colour(level.state()));
        lines(g, todo, room, gap + bar + height * 0.43, height * 0.26);
        ink.write(g, leave, width - gap, height - gap * 0.5, TextAlignment.RIGHT, 0.9, false, ink.faint());
    }

    /** What the green is, under it. */
    private void aim(GraphicsContext g, double x, double top, double width, double tall, LevelPicture level) {
        double ems = tall * 0.7 / ink.em();
        double middle = x + SCALE.part((level.window().lowDbtp() + level.window().highDbtp()) / 2) * width;
        double half = ink.width(level.aimText(), 1, false) * ems / 2;
        ink.write(g, level.aimText(), Math.min(middle, x + width - half), top + tall * 0.6, TextAlignment.CENTER, ems, false, ink.faint());
    }

    private void bar(GraphicsContext g, double x, double y, double width, double height, LevelPicture level) {
        g.setFill(ink.trough());
        g.fillRoundRect(x, y, width, height, height * 0.15, height * 0.15);
        double low = x + SCALE.part(level.window().lowDbtp()) * width;
        double high = x + SCALE.part(level.window().highDbtp()) * width;
        Color good = ink.good();
        g.setFill(Color.color(good.getRed(), good.getGreen(), good.getBlue(), 0.25));
        g.fillRect(low, y, high - low, height);
        g.setFill(level.peakDbtp() >= 0 ? ink.strong() : ink.heard());
        g.fillRoundRect(x, y + height * 0.25, SCALE.part(level.peakDbtp()) * width, height * 0.5, height * 0.1, height * 0.1);
        g.setStroke(good);
        g.setLineWidth(Math.max(4, height * 0.03));
        g.strokeLine(low, y, low, y + height);
        g.strokeLine(high, y, high, y + height);
        if (level.highestDbtp() > SCALE.lowestDb()) {
            double highest = x + SCALE.part(level.highestDbtp()) * width;
            g.setStroke(ink.text());
            g.strokeLine(highest, y + height * 0.1, highest, y + height * 0.9);
        }
    }

    private Color colour(LevelPicture.State state) {
        return switch (state) {
            case NOTHING -> ink.faint();
            case QUIET -> ink.heard();
            case GOOD -> ink.good();
            case HOT -> ink.clear();
            case OVER -> ink.strong();
        };
    }

    private void one(GraphicsContext g, String text, double room, double middle, double tall, boolean bold, Color colour) {
        double ems = tall * 0.75 / ink.em();
        double needed = ink.width(text, 1, bold) * ems;
        double fitting = needed > room ? ems * room / needed : ems;
        ink.write(g, text, g.getCanvas().getWidth() / 2, middle, TextAlignment.CENTER, fitting, bold, colour);
    }

    /** On two lines where one would be too small to read from afar. */
    private void lines(GraphicsContext g, String text, double room, double top, double tall) {
        int cut = text.length() > 24 ? text.lastIndexOf(' ', text.length() / 2 + 6) : -1;
        if (cut > 0) {
            one(g, text.substring(0, cut), room, top + tall * 0.25, tall * 0.42, true, ink.text());
            one(g, text.substring(cut + 1), room, top + tall * 0.68, tall * 0.42, true, ink.text());
        } else {
            one(g, text, room, top + tall * 0.45, tall * 0.45, true, ink.text());
        }
    }
}
