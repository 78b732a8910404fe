package evenwood.ui.paint;

import evenwood.judge.Severity;
import evenwood.ui.model.TonePicture;
import evenwood.ui.scale.LevelScale;
import evenwood.ui.scale.TagRows;
import java.util.List;
import java.util.function.IntFunction;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.TextAlignment;

/** The spectrum as a curve over the ribbon it should lie in, with the fault words where they live on the frequency axis. */
public final class TonePainter {
    private static final int LINES_APART_DB = 12;
    private final Ink ink;
    private final IntFunction<String> frequencyWords;

    /** @param frequencyWords a tick's frequency with its unit */
    public TonePainter(Ink ink, IntFunction<String> frequencyWords) {
        this.ink = ink;
        this.frequencyWords = frequencyWords;
    }

    public void paint(GraphicsContext g, double width, double height, TonePicture tone) {
        double em = ink.em();
        double left = CurveFrame.left(ink);
        double right = CurveFrame.right(ink, width);
        double tagRow = em * 1.75;
        TagRows rows = new TagRows(left, right, em * 0.4);
        List<TagRows.Place> places = tone.tags().stream().map(tag -> rows.place(CurveFrame.x(middle(tag), left, right), tagWidth(tag))).toList();
        CurveFrame frame = new CurveFrame(g, ink, width, height, em * 0.9 + rows.rows() * tagRow, new LevelScale(tone.topDb() - TonePicture.RANGE_DB, tone.topDb()));
        regions(g, tone, frame, places, tagRow);
        frame.grid(frequencyWords, tone.unit(), LINES_APART_DB);
        ribbon(tone.wanted(), frame);
        frame.band(tone.heard(), ink.heard(), 0.25);
        frame.line(tone.before(), 0, ink.other(), thick(0.16), em * 0.12, em * 0.5);
        frame.line(tone.predicted(), 0, ink.other(), thick(0.15), em * 0.5, em * 0.35);
        frame.line(tone.heard(), 0, ink.heard(), thick(0.2));
        tags(g, tone, places, tagRow);
    }

    private double thick(double ems) {
        return Math.max(1.5, ems * ink.em());
    }

    private void ribbon(List<TonePicture.Point> wanted, CurveFrame frame) {
        frame.band(wanted, ink.good(), ink.isDark() ? 0.28 : 0.2);
        Color edge = Color.color(ink.good().getRed(), ink.good().getGreen(), ink.good().getBlue(), 0.7);
        frame.line(wanted, -1, edge, 1);
        frame.line(wanted, 1, edge, 1);
    }

    /** Where each fault lives, as a light column under its word. */
    private void regions(GraphicsContext g, TonePicture tone, CurveFrame frame, List<TagRows.Place> places, double tagRow) {
        for (int i = 0; i < tone.tags().size(); i++) {
            TonePicture.Tag tag = tone.tags().get(i);
            Color colour = colour(tag.severity());
            double from = frame.x(tag.lowHz());
            double to = frame.x(tag.highHz());
            double y = ink.em() * 0.4 + (places.get(i).row() + 1) * tagRow - ink.em() * 0.3;
            g.setFill(Color.color(colour.getRed(), colour.getGreen(), colour.getBlue(), ink.isDark() ? 0.12 : 0.08));
            g.fillRect(from, y, Math.max(2, to - from), frame.bottom() - y);
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
