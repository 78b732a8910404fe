package evenwood.report;

import evenwood.coach.Assessment;
import evenwood.measure.BandLevel;
import evenwood.measure.ToneDifference;
import evenwood.judge.ToneComparison;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** The take's spectrum over what is wanted with its tolerance. */
final class SheetCurve {
    private static final double LOWEST_HZ = 44;
    private static final double OCTAVES = Math.log(18_000 / LOWEST_HZ) / Math.log(2);
    private static final double RANGE_DB = 50;
    private static final double CEILING_DB = 0;

    private final Drawing page;
    private final double left;
    private final double top;
    private final double width;
    private final double height;

    private SheetCurve(Drawing page, double left, double top, double width, double height) {
        this.page = page;
        this.left = left;
        this.top = top;
        this.width = width;
        this.height = height;
    }

    static void draw(Drawing page, Sentences sentences, Assessment assessment, double left, double top, double width, double height) {
        SheetCurve curve = new SheetCurve(page, left, top, width, height);
        assessment.verdict().tone().ifPresent(curve::wanted);
        curve.axes();
        List<double[]> heard = new ArrayList<>();
        for (BandLevel band : assessment.readings().spectrum().bands()) {
            if (Double.isFinite(band.relativeDb())) {
                heard.add(curve.at(band.band().centreHz(), band.relativeDb()));
            }
        }
        page.curve(heard, 2, Drawing.BLUE, false);
        if (heard.isEmpty()) {
            page.words(left + width / 2, top + height / 2, 10, Drawing.Anchor.MIDDLE, sentences.say("sheet.nothing-played"), Drawing.GREY);
        }
    }

    private void axes() {
        for (double hz : new double[] {50, 100, 200, 500, 1000, 2000, 5000, 10_000}) {
            double x = at(hz, 0)[0];
            page.line(x, top, x, top + height, 0.5, Drawing.PALE);
            page.words(x, top + height + 11, 8, Drawing.Anchor.MIDDLE, hz < 1000 ? Math.round(hz) + " Hz" : Math.round(hz / 1000) + " kHz", Drawing.BLACK);
        }
        for (double db = CEILING_DB; db >= CEILING_DB - RANGE_DB; db -= 10) {
            double y = at(1000, db)[1];
            page.line(left, y, left + width, y, 0.5, Drawing.PALE);
            page.words(left - 4, y + 3, 8, Drawing.Anchor.END, String.format("%.0f", db).replace('-', '−'), Drawing.BLACK);
        }
    }

    private void wanted(ToneComparison tone) {
        List<double[]> upper = new ArrayList<>();
        List<double[]> lower = new ArrayList<>();
        tone.difference().bands().stream().filter(band -> band.weight() > 0).forEach(band -> Optional.ofNullable(tone.wantedDb().get(band.band()))
            .ifPresent(db -> both(band, db, upper, lower)));
        if (upper.size() > 1) {
            Collections.reverse(lower);
            List<double[]> ribbon = new ArrayList<>(upper);
            ribbon.addAll(lower);
            page.area(ribbon, "#e6eef5", "");
        }
    }

    private void both(ToneDifference.Band band, double wantedDb, List<double[]> upper, List<double[]> lower) {
        upper.add(at(band.centreHz(), wantedDb + band.toleranceDb()));
        lower.add(at(band.centreHz(), wantedDb - band.toleranceDb()));
    }

    private double[] at(double hz, double db) {
        double part = Math.log(hz / LOWEST_HZ) / Math.log(2) / OCTAVES;
        double below = Math.max(0, Math.min(RANGE_DB, CEILING_DB - db));
        return new double[] {left + width * part, top + height * below / RANGE_DB};
    }
}
