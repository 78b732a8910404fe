package evenwood.ui.paint;

import evenwood.ui.model.LevelPicture;
import evenwood.ui.scale.LevelScale;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.shape.ArcType;
import javafx.scene.text.TextAlignment;

/** The level as a column of water: the window it should reach, the highest mark, the loudness, where noise and distortion lie. */
public final class LadderPainter {
    private static final LevelScale SCALE = LevelScale.FULL;
    private final Ink ink;
    private final String windowWord;
    private final String onsetWord;
    private final String floorWord;
    private final String highestWord;
    private final String loudnessWord;
    private final String unit;

    public LadderPainter(Ink ink, String windowWord, String onsetWord, String floorWord, String highestWord, String loudnessWord, String unit) {
        this.unit = unit;
        this.ink = ink;
        this.windowWord = windowWord;
        this.onsetWord = onsetWord;
        this.floorWord = floorWord;
        this.highestWord = highestWord;
        this.loudnessWord = loudnessWord;
    }

    public void paint(GraphicsContext g, double width, double height, LevelPicture level) {
        double em = ink.em();
        double top = em * 0.8;
        double bottom = height - em * 0.8;
        double numbers = em * 2.6;
        double column = Math.max(em * 1.6, Math.min(em * 2.8, width * 0.18));
        double left = numbers + em * 0.5;
        double right = left + column;
        ticks(g, numbers, left, right, top, bottom);
        g.setFill(ink.trough());
        g.fillRoundRect(left, top, column, bottom - top, em * 0.6, em * 0.6);
        window(g, level, left, right, top, bottom);
        water(g, level, left, column, top, bottom);
        Marks marks = new Marks(g, right, width, top, bottom);
        marks.add(level.onsetDbfs(), onsetWord, level.onsetText(), ink.strong());
        marks.add(level.highestDbtp(), highestWord, level.highestText(), ink.text());
        marks.add((level.window().lowDbtp() + level.window().highDbtp()) / 2, windowWord, level.windowText(), ink.good());
        marks.add(level.lufs(), loudnessWord, level.loudnessText(), ink.heard());
        marks.add(level.floorDbfs(), floorWord, level.floorText(), ink.faint());
        marks.draw();
        highest(g, level, left, right, top, bottom);
    }

    private void ticks(GraphicsContext g, double numbers, double left, double right, double top, double bottom) {
        for (int db : SCALE.ticks(12)) {
            double y = y(db, top, bottom);
            g.setStroke(ink.line());
            g.setLineWidth(1);
            g.strokeLine(left - ink.em() * 0.3, y, left, y);
            ink.write(g, label(db), numbers, y, TextAlignment.RIGHT, 0.85, false, ink.faint());
        }
    }

    private String label(int db) {
        return db == 0 ? "0 " + unit : "−" + -db;
    }

    private void window(GraphicsContext g, LevelPicture level, double left, double right, double top, double bottom) {
        double high = y(level.window().highDbtp(), top, bottom);
        double low = y(level.window().lowDbtp(), top, bottom);
        Color good = ink.good();
        g.setFill(Color.color(good.getRed(), good.getGreen(), good.getBlue(), 0.22));
        g.fillRect(left, high, right - left, low - high);
        g.setStroke(good);
        g.setLineWidth(2);
        g.strokeLine(left, high, right, high);
        g.strokeLine(left, low, right, low);
    }

    private void water(GraphicsContext g, LevelPicture level, double left, double column, double top, double bottom) {
        if (!(level.peakDbtp() > SCALE.lowestDb())) {
            return;
        }
        double y = y(level.peakDbtp(), top, bottom);
        double inset = column * 0.2;
        g.setFill(level.peakDbtp() >= 0 ? ink.strong() : ink.heard());
        g.fillRoundRect(left + inset, y, column - 2 * inset, bottom - y, ink.em() * 0.4, ink.em() * 0.4);
    }

    private void highest(GraphicsContext g, LevelPicture level, double left, double right, double top, double bottom) {
        if (!(level.highestDbtp() > SCALE.lowestDb())) {
            return;
        }
        double y = y(level.highestDbtp(), top, bottom);
        g.setStroke(ink.text());
        g.setLineWidth(3);
        g.strokeLine(left, y, right, y);
    }

    private static double y(double db, double top, double bottom) {
        return bottom - SCALE.part(db) * (bottom - top);
    }

    /** Words beside the column, moved apart where they would cover each other. */
    private final class Marks {
        private final GraphicsContext g;
        private final double column;
        private final double width;
        private final double top;
        private final double bottom;
        private final java.util.List<Mark> marks = new java.util.ArrayList<>();

        private record Mark(double db, String word, String number, Color colour) { }

        Marks(GraphicsContext g, double column, double width, double top, double bottom) {
            this.g = g;
            this.column = column;
            this.width = width;
            this.top = top;
            this.bottom = bottom;
        }

        void add(double db, String word, String number, Color colour) {
            if (db > SCALE.lowestDb()) {
                marks.add(new Mark(db, word, number, colour));
            }
        }

        void draw() {
            double em = ink.em();
            double line = em * 2.35;
            marks.sort(java.util.Comparator.comparingDouble((Mark mark) -> mark.db).reversed());
            double[] at = new double[marks.size()];
            for (int i = 0; i < at.length; i++) {
                at[i] = Math.max(y(marks.get(i).db, top, bottom), i == 0 ? top + line / 2 - em * 0.6 : at[i - 1] + line);
            }
            double over = at.length == 0 ? 0 : at[at.length - 1] + line / 2 - em * 0.5 - bottom;
            for (int i = at.length - 1; i >= 0 && over > 0; i--) {
                at[i] -= over;
                over = i == 0 ? 0 : at[i - 1] + line - at[i];
            }
            for (int i = 0; i < at.length; i++) {
                draw(marks.get(i), at[i]);
            }
        }

        private void draw(Mark mark, double middle) {
            double em = ink.em();
            double y = y(mark.db, top, bottom);
            double text = column + em * 1.2;
            g.setStroke(mark.colour);
            g.setLineWidth(1.5);
            g.strokePolyline(new double[] {column + 2, column + em * 0.5, text - em * 0.3}, new double[] {y, y, middle}, 3);
            g.setFill(mark.colour);
            g.fillArc(column - em * 0.1, y - em * 0.2, em * 0.4, em * 0.4, 0, 360, ArcType.ROUND);
            ink.write(g, ink.fitted(mark.word, width - text, 0.85, false), text, middle - em * 0.52, TextAlignment.LEFT, 0.85, false, ink.faint());
            ink.write(g, ink.fitted(mark.number, width - text, 0.95, true), text, middle + em * 0.52, TextAlignment.LEFT, 0.95, true, ink.text());
        }
    }
}
