package evenwood.ui.paint;

import evenwood.judge.Severity;
import evenwood.ui.model.TonePicture;
import evenwood.ui.scale.FrequencyScale;
import evenwood.ui.scale.LevelScale;
import evenwood.ui.scale.TagRows;
import java.util.List;
import java.util.function.IntFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The spectrum as a curve over the ribbon it should lie in, with the fault words where they live on the frequency axis. */
public final class TonePainter {
    private static final FrequencyScale AXIS = FrequencyScale.INSTRUMENTS;
    private final Ink ink;
    private final IntFunction<String> frequencyWords;

    /** @param frequencyWords a tick's frequency with its unit */
    public TonePainter(Ink ink, IntFunction<String> frequencyWords) {
        this.ink = ink;
        this.frequencyWords = frequencyWords;
    }

    public void paint(GraphicsContext g, double width, double height, TonePicture tone) {
        double em = ink.em();
        double left = em * 3.6;
        double right = width - em * 0.6;
        double tagRow = em * 1.75;
        TagRows rows = new TagRows(left, right, em * 0.4);
        List<TagRows.Place> places = tone.tags().stream().map(tag -> rows.place(x(middle(tag), left, right), tagWidth(tag))).toList();
        double top = em * 0.9 + rows.rows() * tagRow;
        double bottom = height - em * 1.7;
        LevelScale scale = new LevelScale(tone.topDb() - TonePicture.RANGE_DB, tone.topDb());
        Frame frame = new Frame(left, right, top, bottom, scale);
        regions(g, tone, frame, places, tagRow);
        grid(g, frame, tone.unit());
        ribbon(g, tone.wanted(), frame);
        band(g, tone.heard(), frame, ink.heard(), 0.25);
        line(g, tone.before(), frame, ink.other(), em * 0.16, em * 0.12, em * 0.5);
        line(g, tone.predicted(), frame, ink.other(), em * 0.15, em * 0.5, em * 0.35);
        line(g, tone.heard(), frame, ink.heard(), em * 0.2);
        tags(g, tone, places, tagRow);
    }

    private record Frame(double left, double right, double top, double bottom, LevelScale scale) {
        double x(double hz) {
            return TonePainter.x(hz, left, right);
        }

        double y(double db) {
            return bottom - scale.part(db) * (bottom - top);
        }
    }

    private static double x(double hz, double left, double right) {
        return left + AXIS.part(hz) * (right - left);
    }

    private void grid(GraphicsContext g, Frame frame, String unit) {
        g.setStroke(ink.line());
        g.setLineWidth(1);
        for (int hz : AXIS.ticksHz(frame.right - frame.left < ink.em() * 32)) {
            double x = Math.round(frame.x(hz)) + 0.5;
            g.strokeLine(x, frame.top, x, frame.bottom);
            ink.write(g, frequencyWords.apply(hz), Math.min(x, frame.right - ink.em() * 1.2), frame.bottom + ink.em() * 0.95, TextAlignment.CENTER, 0.85, false, ink.faint());
        }
        for (int db : frame.scale.ticks(12)) {
            double y = Math.round(frame.y(db)) + 0.5;
            g.strokeLine(frame.left, y, frame.right, y);
            ink.write(g, (db == 0 ? "0" : db > 0 ? "+" + db : "−" + -db) + unit, frame.left - ink.em() * 0.3, y, TextAlignment.RIGHT, 0.8, false, ink.faint());
        }
    }

    private void ribbon(GraphicsContext g, List<TonePicture.Point> wanted, Frame frame) {
        if (wanted.size() < 2) {
            return;
        }
        band(g, wanted, frame, ink.good(), ink.isDark() ? 0.28 : 0.2);
        Color edge = ink.good();
        g.setStroke(Color.color(edge.getRed(), edge.getGreen(), edge.getBlue(), 0.7));
        g.setLineWidth(1);
        for (int side = -1; side <= 1; side += 2) {
            g.beginPath();
            for (int i = 0; i < wanted.size(); i++) {
                TonePicture.Point point = wanted.get(i);
                go(g, i, frame.x(point.hz()), frame.y(point.db() + side * point.eitherSideDb()));
            }
            g.stroke();
        }
    }

    private void band(GraphicsContext g, List<TonePicture.Point> points, Frame frame, Color colour, double opacity) {
        if (points.size() < 2) {
            return;
        }
        int count = points.size();
        double[] x = new double[2 * count];
        double[] y = new double[2 * count];
        for (int i = 0; i < count; i++) {
            TonePicture.Point point = points.get(i);
            x[i] = frame.x(point.hz());
            y[i] = frame.y(point.db() + point.eitherSideDb());
            x[2 * count - 1 - i] = x[i];
            y[2 * count - 1 - i] = frame.y(point.db() - point.eitherSideDb());
        }
        g.setFill(Color.color(colour.getRed(), colour.getGreen(), colour.getBlue(), opacity));
        g.fillPolygon(x, y, 2 * count);
    }

    private void line(GraphicsContext g, List<TonePicture.Point> points, Frame frame, Color colour, double thick, double... dashes) {
        if (points.size() < 2) {
            return;
        }
        g.setStroke(colour);
        g.setLineWidth(Math.max(1.5, thick));
        g.setLineDashes(dashes);
        g.beginPath();
        for (int i = 0; i < points.size(); i++) {
            go(g, i, frame.x(points.get(i).hz()), frame.y(points.get(i).db()));
        }
        g.stroke();
        g.setLineDashes();
    }

    private static void go(GraphicsContext g, int index, double x, double y) {
        if (index == 0) {
            g.moveTo(x, y);
        } else {
            g.lineTo(x, y);
        }
    }

    /** Where each fault lives, as a light column under its word. */
    private void regions(GraphicsContext g, TonePicture tone, Frame frame, List<TagRows.Place> places, double tagRow) {
        for (int i = 0; i < tone.tags().size(); i++) {
            TonePicture.Tag tag = tone.tags().get(i);
            Color colour = colour(tag.severity());
            double from = frame.x(tag.lowHz());
            double to = frame.x(tag.highHz());
            double y = ink.em() * 0.4 + (places.get(i).row() + 1) * tagRow - ink.em() * 0.3;
            g.setFill(Color.color(colour.getRed(), colour.getGreen(), colour.getBlue(), ink.isDark() ? 0.12 : 0.08));
            g.fillRect(from, y, Math.max(2, to - from), frame.bottom - y);
            g.setStroke(colour);
            g.setLineWidth(2);
            g.strokeLine(from, y, Math.max(from + 2, to), y);
        }
    }

    private void tags(GraphicsContext g, TonePicture tone, List<TagRows.Place> places, double tagRow) {
        double em = ink.em();
        for (int i = 0; i < tone.tags().size(); i++) {
            TonePicture.Tag tag = tone.tags().get(i);
            double x = places.get(i).leftPx();
            double y = em * 0.3 + places.get(i).row() * tagRow;
            g.setFill(ink.sheet());
            g.fillRoundRect(x, y, tagWidth(tag), em * 1.5, em * 0.5, em * 0.5);
            g.setStroke(colour(tag.severity()));
            g.setLineWidth(1.5);
            g.strokeRoundRect(x, y, tagWidth(tag), em * 1.5, em * 0.5, em * 0.5);
            SeverityMark.paint(g, ink, tag.severity(), x + em * 0.5, y + em * 0.75);
            ink.write(g, tag.word(), x + em * 0.7 + SeverityMark.width(ink), y + em * 0.75, TextAlignment.LEFT, 0.95, true, ink.text());
        }
    }

    private double tagWidth(TonePicture.Tag tag) {
        return ink.width(tag.word(), 0.95, true) + SeverityMark.width(ink) + ink.em() * 1.2;
    }

    private Color colour(Severity severity) {
        return SeverityMark.colour(ink, severity);
    }

    private static double middle(TonePicture.Tag tag) {
        return Math.sqrt(Math.max(1, tag.lowHz()) * tag.highHz());
    }
}
