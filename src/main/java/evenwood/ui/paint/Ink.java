package evenwood.ui.paint;

import java.util.HashMap;
import java.util.Map;
import javafx.geometry.VPos;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.paint.Color;
import javafx.scene.text.Font;
import javafx.scene.text.FontWeight;
import javafx.scene.text.Text;
import javafx.scene.text.TextAlignment;

/**
 * Colours and letters of every picture, in one theme and text size.
 *
 * <p>Source of the colours: Okabe and Ito, "Color Universal Design" (2008), eight colours that people with any kind of colour
 * vision can tell apart: blue, sky blue, bluish green, vermillion, orange, reddish purple; on a paper or a slate of our own.
 * State is never told by colour alone: a word or a shape goes with it.
 * <p>Thread: the screen's.
 */
public final class Ink {
    /** Body text at 100 %. */
    public static final double EM_PX = 14;

    public static final Color BLUE = Color.web("#0072B2");
    public static final Color SKY = Color.web("#56B4E9");
    public static final Color GREEN = Color.web("#009E73");
    public static final Color VERMILLION = Color.web("#D55E00");
    public static final Color ORANGE = Color.web("#E69F00");
    public static final Color PURPLE = Color.web("#CC79A7");

    private final boolean dark;
    private final double em;
    private final Map<Integer, Font> fonts = new HashMap<>();
    private final Map<String, Double> widths = new HashMap<>();

    /** @param textScale 1 to 2 */
    public Ink(boolean dark, double textScale) {
        this.dark = dark;
        em = EM_PX * textScale;
    }

    public boolean isDark() {
        return dark;
    }

    /** Height of body text in pixels; all gaps are told in it. */
    public double em() {
        return em;
    }

    public Color text() {
        return dark ? Color.web("#ECE8DF") : Color.web("#26241F");
    }

    public Color faint() {
        return dark ? Color.web("#A8A69E") : Color.web("#67635A");
    }

    public Color line() {
        return dark ? Color.web("#3B4148") : Color.web("#DDD6C8");
    }

    /** What a picture stands on. */
    public Color sheet() {
        return dark ? Color.web("#20252B") : Color.web("#FFFDF8");
    }

    /** The trough of a ladder, the way of a fader. */
    public Color trough() {
        return dark ? Color.web("#2C323A") : Color.web("#EFEADF");
    }

    /** What is heard. */
    public Color heard() {
        return dark ? SKY : BLUE;
    }

    /** What is as it should be. */
    public Color good() {
        return dark ? Color.web("#2FBF95") : GREEN;
    }

    /** What spoils the take. */
    public Color strong() {
        return dark ? Color.web("#F07B2E") : VERMILLION;
    }

    /** What should be mended. */
    public Color clear() {
        return ORANGE;
    }

    /** What was before, or will be after. */
    public Color other() {
        return dark ? Color.web("#DD9CC0") : Color.web("#A8517F");
    }

    public Font font(double ems, boolean bold) {
        int key = (int) Math.round(ems * 100) * 2 + (bold ? 1 : 0);
        return fonts.computeIfAbsent(key, any -> Font.font(Font.getDefault().getFamily(), bold ? FontWeight.BOLD : FontWeight.NORMAL, ems * em));
    }

    public double width(String text, double ems, boolean bold) {
        if (widths.size() > 2000) {
            widths.clear();
        }
        return widths.computeIfAbsent(ems + (bold ? "b" : "n") + text, any -> {
            Text measured = new Text(text);
            measured.setFont(font(ems, bold));
            return measured.getLayoutBounds().getWidth();
        });
    }

    /** Writes one line with its middle at y. */
    public void write(GraphicsContext g, String text, double x, double y, TextAlignment side, double ems, boolean bold, Color colour) {
        g.setFont(font(ems, bold));
        g.setFill(colour);
        g.setTextBaseline(VPos.CENTER);
        g.setTextAlign(side);
        g.fillText(text, x, y);
    }

    /** The whole text, or what fits with an ellipsis. */
    public String fitted(String text, double widthPx, double ems, boolean bold) {
        if (width(text, ems, bold) <= widthPx) {
            return text;
        }
        for (int length = text.length() - 1; length > 0; length--) {
            String shorter = text.substring(0, length).stripTrailing() + "…";
            if (width(shorter, ems, bold) <= widthPx) {
                return shorter;
            }
        }
        return "";
    }
}
