package evenwood.report;

import evenwood.wiring.Device;
import evenwood.wiring.Fit;
import evenwood.wiring.JointReport;
import evenwood.wiring.Response;
import evenwood.wiring.WayReport;
import evenwood.wiring.WiringRules;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A connection plan as a picture: the chain from left to right, how it fits at every joint in word and colour, and the predicted
 * response at the end.
 *
 * <p>Colours: Okabe and Ito's set, which colour-blind people can tell apart; the word always stands beside the colour.
 */
public final class WireSheet {
    private static final int BOX_WIDTH_PX = 190;
    private static final int GAP_PX = 150;
    private static final int CABLE_CHARACTERS = 22;
    private static final int ROW_PX = 115;
    private static final int MARGIN_PX = 20;
    private static final int PLOT_HEIGHT_PX = 260;
    private static final int PLOT_WIDTH_PX = 680;
    private static final double PLOT_RANGE_DB = 60;

    private final WirePlan plan;
    private final StringBuilder svg = new StringBuilder();

    private WireSheet(WirePlan plan) {
        this.plan = plan;
    }

    /** The picture alone. */
    public static String svg(WirePlan plan) {
        return new WireSheet(plan).drawn();
    }

    /** The picture and the plan in words, as a page that needs nothing else. */
    public static String html(WirePlan plan, Sentences sentences) {
        StringBuilder page = new StringBuilder("<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>").append(escaped(plan.rig().name()))
            .append("</title><style>body{font-family:sans-serif;margin:2em;max-width:80em}pre{font-size:0.9em;overflow-x:auto}svg{max-width:100%}</style></head><body>\n")
            .append("<h1>").append(escaped(plan.rig().name())).append("</h1>\n").append(svg(plan)).append("\n<pre>");
        WireText.lines(plan, sentences, 120).forEach(line -> page.append(escaped(line)).append('\n'));
        return page.append("</pre>\n</body></html>\n").toString();
    }

    private String drawn() {
        int joints = plan.report().ways().stream().mapToInt(way -> way.joints().size()).max().orElseThrow();
        int width = Math.max(2 * MARGIN_PX + (joints + 1) * BOX_WIDTH_PX + joints * GAP_PX, PLOT_WIDTH_PX + 2 * MARGIN_PX + 60);
        int rows = plan.report().ways().size();
        int height = 2 * MARGIN_PX + rows * ROW_PX + PLOT_HEIGHT_PX + 60;
        svg.append(String.format(Locale.ROOT, "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%d\" height=\"%d\" viewBox=\"0 0 %d %d\" "
            + "font-family=\"sans-serif\" font-size=\"13\"><rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>\n", width, height, width, height));
        int row = 0;
        for (WayReport way : plan.report().ways()) {
            chain(way, MARGIN_PX + row * ROW_PX);
            row++;
        }
        plot(MARGIN_PX + 45, MARGIN_PX + rows * ROW_PX + 25);
        return svg.append("</svg>\n").toString();
    }

    private void chain(WayReport way, int top) {
        boolean thru = way.last().joint().onThru();
        int left = MARGIN_PX;
        box(left, top, thru ? "thru socket of " + plan.report().connection().main().boxWithThru().orElseThrow().box().name()
            : plan.report().connection().pickup().name());
        for (JointReport report : way.joints()) {
            int from = left + BOX_WIDTH_PX;
            Fit fit = WiringRules.worstAt(plan.verdicts(), report.joint());
            svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"%s\" stroke-width=\"4\"%s/>\n",
                from, top + 32, from + GAP_PX, top + 32, colour(fit), fit == Fit.RIGHT ? "" : " stroke-dasharray=\"8 4\""));
            cable(from + GAP_PX / 2, top, report.joint().cable().map(WiringWords::cable).orElse(""));
            text(from + GAP_PX / 2, top + 52, "middle", report.joint().number() + ": " + WireText.word(fit), 13);
            text(from + GAP_PX / 2, top + 68, "middle", WireText.number(report.usualDbu(), 0) + " dBu, bass from", 10);
            text(from + GAP_PX / 2, top + 80, "middle", WireText.hz(report.bassCornerHz()), 10);
            left = from + GAP_PX;
            box(left, top, report.joint().to() instanceof Device.Between between ? WiringWords.box(between.plugged())
                : WiringWords.input(((Device.End) report.joint().to()).plugged()));
        }
    }

    /** Over its line; a long name takes two rows. */
    private void cable(int middle, int top, String words) {
        List<String> lines = new ArrayList<>();
        TextWrap.wrap(lines, CABLE_CHARACTERS, "", words);
        for (int i = 0; i < lines.size(); i++) {
            text(middle, top + 22 - 12 * (lines.size() - 1 - i), "middle", lines.get(i), 10);
        }
    }

    private void box(int left, int top, String words) {
        svg.append(String.format(Locale.ROOT, "<rect x=\"%d\" y=\"%d\" width=\"%d\" height=\"64\" rx=\"8\" fill=\"#f4f4f0\" stroke=\"#333333\"/>\n", left, top, BOX_WIDTH_PX));
        List<String> lines = new ArrayList<>();
        TextWrap.wrap(lines, 28, "", words);
        for (int i = 0; i < Math.min(4, lines.size()); i++) {
            text(left + BOX_WIDTH_PX / 2, top + 36 - 7 * Math.min(4, lines.size()) + 15 * i + 3, "middle", lines.get(i), 12);
        }
    }

    private void plot(int left, int top) {
        double most = plan.report().ways().stream().mapToDouble(way -> highest(way.last().response())).max().orElseThrow();
        double ceiling = 10 * Math.ceil(most / 10);
        for (double hz : new double[] {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000}) {
            int x = left + x(hz);
            svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"#dddddd\"/>\n", x, top, x, top + PLOT_HEIGHT_PX));
            text(x, top + PLOT_HEIGHT_PX + 16, "middle", hz < 1000 ? Math.round(hz) + "" : Math.round(hz / 1000) + "k", 11);
        }
        for (double below = 0; below <= PLOT_RANGE_DB; below += 10) {
            int y = top + (int) Math.round(below / PLOT_RANGE_DB * PLOT_HEIGHT_PX);
            svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"#dddddd\"/>\n", left, y, left + PLOT_WIDTH_PX, y));
            text(left - 6, y + 4, "end", WireText.number(ceiling - below, 0), 11);
        }
        text(left, top - 8, "start", "Predicted response at the end of the chain, dB against the pickup's own voltage; Hz", 13);
        curve(plan.report().main(), left, top, ceiling, "#0072B2", "");
        plan.report().thru().ifPresent(way -> curve(way, left, top, ceiling, "#D55E00", " stroke-dasharray=\"6 4\""));
        int lowest = left + x(Math.max(Response.frequencyHz(0), plan.report().lowestHz()));
        svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" y1=\"%d\" x2=\"%d\" y2=\"%d\" stroke=\"#333333\" stroke-dasharray=\"2 3\"/>\n", lowest, top, lowest, top + PLOT_HEIGHT_PX));
        text(lowest + 4, top + PLOT_HEIGHT_PX - 6, "start", "lowest note", 11);
    }

    private void curve(WayReport way, int left, int top, double ceilingDb, String colour, String dashes) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < Response.points(); i++) {
            double below = Math.min(PLOT_RANGE_DB, Math.max(0, ceilingDb - way.last().response().levelDb(i)));
            points.append(String.format(Locale.ROOT, "%d,%.1f ", left + x(Response.frequencyHz(i)), top + below / PLOT_RANGE_DB * PLOT_HEIGHT_PX));
        }
        svg.append("<polyline fill=\"none\" stroke-width=\"2.5\" stroke=\"").append(colour).append('"').append(dashes).append(" points=\"")
            .append(points.toString().strip()).append("\"/>\n");
    }

    private static double highest(Response response) {
        double highest = response.levelDb(0);
        for (int i = 1; i < Response.points(); i++) {
            highest = Math.max(highest, response.levelDb(i));
        }
        return highest;
    }

    private static int x(double hz) {
        return (int) Math.round(PLOT_WIDTH_PX * Math.log(hz / 20) / Math.log(1000));
    }

    private void text(int x, int y, String anchor, String words, int size) {
        svg.append(String.format(Locale.ROOT, "<text x=\"%d\" y=\"%d\" text-anchor=\"%s\" font-size=\"%d\" fill=\"#222222\">%s</text>\n", x, y, anchor, size, escaped(words)));
    }

    private static String colour(Fit fit) {
        return switch (fit) {
            case RIGHT -> "#009E73";
            case TOLERABLE -> "#E69F00";
            case WRONG -> "#D55E00";
            case DANGER -> "#CC79A7";
        };
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
