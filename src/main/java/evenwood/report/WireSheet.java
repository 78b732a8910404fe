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
    private static final double BOX_WIDTH = 190;
    private static final double BOX_HEIGHT = 64;
    private static final double GAP = 150;
    private static final int CABLE_CHARACTERS = 22;
    private static final double ROW = 115;
    private static final double MARGIN = 20;
    private static final double PLOT_HEIGHT = 260;
    private static final double PLOT_WIDTH = 680;
    private static final double LEAST_RANGE_DB = 60;

    private final WirePlan plan;
    private final Sentences sentences;
    private final Drawing page;

    private WireSheet(WirePlan plan, Sentences sentences) {
        this.plan = plan;
        this.sentences = sentences;
        int joints = plan.report().ways().stream().mapToInt(way -> way.joints().size()).max().orElseThrow();
        page = new Drawing(Math.max(2 * MARGIN + (joints + 1) * BOX_WIDTH + joints * GAP, PLOT_WIDTH + 2 * MARGIN + 250),
            2 * MARGIN + plan.report().ways().size() * ROW + PLOT_HEIGHT + 60);
    }

    public static String svg(WirePlan plan, Sentences sentences) {
        return DrawingSvg.svg(new WireSheet(plan, sentences).drawn());
    }

    public static byte[] pdf(WirePlan plan, Sentences sentences) {
        return DrawingPdf.pdf(plan.rig().name(), List.of(new WireSheet(plan, sentences).drawn()));
    }

    public static byte[] png(WirePlan plan, Sentences sentences) {
        return DrawingPdf.png(plan.rig().name(), List.of(new WireSheet(plan, sentences).drawn()));
    }

    /** The picture and the plan in words, as a page that needs nothing else. */
    public static String html(WirePlan plan, Sentences sentences) {
        return DrawingSvg.htmlWithWords(plan.rig().name(), new WireSheet(plan, sentences).drawn(), WireText.lines(plan, sentences, 120), sentences.locale());
    }

    private Drawing drawn() {
        double top = MARGIN;
        for (WayReport way : plan.report().ways()) {
            chain(way, top);
            top += ROW;
        }
        plot(MARGIN + 45, top + 25);
        return page;
    }

    private void chain(WayReport way, double top) {
        double left = MARGIN;
        box(left, top, way.last().joint().onThru() ? sentences.say("wire.thru-of", plan.report().connection().main().boxWithThru().orElseThrow().box().name())
            : plan.report().connection().pickup().name());
        for (JointReport report : way.joints()) {
            double from = left + BOX_WIDTH;
            double middle = from + GAP / 2;
            Fit fit = WiringRules.worstAt(plan.verdicts(), report.joint());
            page.curve(List.of(new double[] {from, top + BOX_HEIGHT / 2}, new double[] {from + GAP, top + BOX_HEIGHT / 2}), 4, colour(fit), fit != Fit.RIGHT);
            cable(middle, top, report.joint().cable().map(WiringWords::cable).orElse(""));
            page.words(middle, top + 52, 13, Drawing.Anchor.MIDDLE, report.joint().number() + ": " + sentences.say("wire.fit." + word(fit)), Drawing.BLACK);
            page.words(middle, top + 68, 10, Drawing.Anchor.MIDDLE, sentences.say("wire.level-and-bass", sentences.number(report.usualDbu(), 0)), Drawing.BLACK);
            page.words(middle, top + 80, 10, Drawing.Anchor.MIDDLE, WireText.hz(report.bassCornerHz(), sentences), Drawing.BLACK);
            left = from + GAP;
            box(left, top, report.joint().to() instanceof Device.Between between ? WiringWords.box(between.plugged())
                : WiringWords.input(((Device.End) report.joint().to()).plugged()));
        }
    }

    /** Over its line; a long name takes two rows. */
    private void cable(double middle, double top, String words) {
        List<String> lines = new ArrayList<>();
        TextWrap.wrap(lines, CABLE_CHARACTERS, "", words);
        for (int i = 0; i < lines.size(); i++) {
            page.words(middle, top + 22 - 12 * (lines.size() - 1 - i), 10, Drawing.Anchor.MIDDLE, lines.get(i), Drawing.BLACK);
        }
    }

    private void box(double left, double top, String words) {
        page.box(left, top, BOX_WIDTH, BOX_HEIGHT, "#f4f4f0", Drawing.BLACK);
        List<String> lines = new ArrayList<>();
        TextWrap.wrap(lines, 28, "", words);
        page.centred(left + BOX_WIDTH / 2, top + BOX_HEIGHT / 2, 12, lines.subList(0, Math.min(4, lines.size())));
    }

    private void plot(double left, double top) {
        double most = plan.report().ways().stream().mapToDouble(way -> highest(way.last().response())).max().orElseThrow();
        double ceiling = 10 * Math.ceil(most / 10);
        double least = plan.report().ways().stream().mapToDouble(way -> way.last().response().atHz(plan.report().lowestHz())).min().orElseThrow();
        double rangeDb = Math.max(LEAST_RANGE_DB, ceiling - 10 * Math.floor(least / 10));
        for (double hz : new double[] {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000}) {
            page.line(left + x(hz), top, left + x(hz), top + PLOT_HEIGHT, 1, Drawing.PALE);
            page.words(left + x(hz), top + PLOT_HEIGHT + 16, 11, Drawing.Anchor.MIDDLE, hz < 1000 ? Math.round(hz) + "" : Math.round(hz / 1000) + "k", Drawing.BLACK);
        }
        for (double below = 0; below <= rangeDb; below += 10) {
            double y = top + below / rangeDb * PLOT_HEIGHT;
            page.line(left, y, left + PLOT_WIDTH, y, 1, Drawing.PALE);
            page.words(left - 6, y + 4, 11, Drawing.Anchor.END, sentences.number(ceiling - below, 0), Drawing.BLACK);
        }
        page.words(left, top - 8, 13, sentences.say("wire.response"));
        curve(plan.report().main(), left, top, ceiling, rangeDb, Drawing.BLUE, false);
        plan.report().thru().ifPresent(way -> curve(way, left, top, ceiling, rangeDb, Drawing.VERMILION, true));
        double lowest = left + x(Math.max(Response.frequencyHz(0), plan.report().lowestHz()));
        page.curve(List.of(new double[] {lowest, top}, new double[] {lowest, top + PLOT_HEIGHT}), 1, Drawing.BLACK, true);
        page.words(lowest + 4, top + PLOT_HEIGHT - 6, 11, sentences.say("wire.lowest-note"));
    }

    private void curve(WayReport way, double left, double top, double ceilingDb, double rangeDb, String colour, boolean dashed) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < Response.points(); i++) {
            double below = Math.min(rangeDb, Math.max(0, ceilingDb - way.last().response().levelDb(i)));
            points.add(new double[] {left + x(Response.frequencyHz(i)), top + below / rangeDb * PLOT_HEIGHT});
        }
        page.curve(points, 2.5, colour, dashed);
        if (plan.report().thru().isPresent()) {
            double[] end = points.get(points.size() - 1);
            page.words(end[0] + 6, end[1] + 4, 11, Drawing.Anchor.START, end(way), colour);
        }
    }

    private static String end(WayReport way) {
        return way.input().input().name();
    }

    private static double highest(Response response) {
        double highest = response.levelDb(0);
        for (int i = 1; i < Response.points(); i++) {
            highest = Math.max(highest, response.levelDb(i));
        }
        return highest;
    }

    private static double x(double hz) {
        return PLOT_WIDTH * Math.log(hz / 20) / Math.log(1000);
    }

    static String word(Fit fit) {
        return fit.name().toLowerCase(Locale.ROOT);
    }

    private static String colour(Fit fit) {
        return switch (fit) {
            case RIGHT -> "#009E73";
            case TOLERABLE -> "#E69F00";
            case WRONG -> "#D55E00";
            case DANGER -> "#CC79A7";
        };
    }
}
