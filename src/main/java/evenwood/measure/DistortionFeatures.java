package evenwood.measure;

import java.util.function.LongToDoubleFunction;

/**
 * The numbers from which {@link DistortionModel} tells distorted from clean playing; pure arithmetic.
 *
 * <p>How: each compares the hardest playing with quieter playing of the same take, so that instrument, player and tone
 * cancel: (1) tops grow wider against the stretch's own autocorrelation; (2) crest stops growing with the level, peak
 * against what is left of the note; (3) peaks crowd under a ceiling; (4) tops are flat; (5) fine ripple dies away near
 * the tops, and the tops get less peaked ({@link TopMoments}); (6) one side is held back. All but the last are taken of
 * both sides and enter as the smaller and the larger of the two, so that polarity does not matter.
 */
final class DistortionFeatures {
    private static final String[] OF_A_SIDE = {
        "widening", "late-widening", "attack-widening", "near-widening", "crest-by-rms", "crest-by-rms-below", "crest-by-peak",
        "crowding-near", "crowding-wide", "stretch-crowding", "flat", "flat-excess", "flat-growth",
        "ripple-trend", "ripple-clarity", "ripple-step", "peakedness-trend", "peakedness-clarity", "peakedness-step"};
    static final String[] NAMES = names();

    private static final int FEWEST_TOPS = 3;
    /** Our choice: how far down the loudest stretches are looked at, and from where on as the hardest. */
    private static final double CREST_RANGE_DB = 12;
    private static final double CREST_BEND_DB = 5;
    private static final double MOMENTS_RANGE_DB = 14;
    private static final double MOMENTS_BEND_DB = 7;

    private final TopTable table;
    private final HopHistory rows;
    private final boolean upper;
    private final double top;

    private DistortionFeatures(TopTable table, HopHistory rows, boolean upper) {
        this.table = table;
        this.rows = rows;
        this.upper = upper;
        top = table.levelAboveAllBut(upper, 2);
    }

    static double[] of(TopTable table, HopHistory rows) {
        double[] up = new DistortionFeatures(table, rows, true).ofTheSide();
        double[] down = new DistortionFeatures(table, rows, false).ofTheSide();
        double[] values = new double[NAMES.length];
        for (int i = 0; i < up.length; i++) {
            values[2 * i] = Math.min(up[i], down[i]);
            values[2 * i + 1] = Math.max(up[i], down[i]);
        }
        values[values.length - 1] = oneSidedness(rows);
        return values;
    }

    private static String[] names() {
        String[] names = new String[2 * OF_A_SIDE.length + 1];
        for (int i = 0; i < OF_A_SIDE.length; i++) {
            names[2 * i] = OF_A_SIDE[i] + "-least";
            names[2 * i + 1] = OF_A_SIDE[i] + "-most";
        }
        names[names.length - 1] = "one-sidedness";
        return names;
    }

    private double[] ofTheSide() {
        int peak = upper ? StretchHistory.UPPER_DBFS : StretchHistory.LOWER_DBFS;
        LongToDoubleFunction crest = row -> rows.get(row, peak) - rows.get(row, StretchHistory.RMS_DBFS);
        LevelTrend byRms = LevelTrend.of(rows, crest, StretchHistory.RMS_DBFS, CREST_RANGE_DB, CREST_BEND_DB, StretchHistory.BRIGHTNESS_DB);
        LevelTrend byPeak = LevelTrend.of(rows, crest, peak, CREST_RANGE_DB, CREST_BEND_DB, StretchHistory.BRIGHTNESS_DB);
        LongToDoubleFunction ripple = column(upper ? StretchHistory.UPPER_RIPPLE : StretchHistory.LOWER_RIPPLE);
        LevelTrend ripples = LevelTrend.of(rows, ripple, StretchHistory.RMS_DBFS, MOMENTS_RANGE_DB, MOMENTS_BEND_DB,
            StretchHistory.FINE_DB, StretchHistory.MIDDLE_DB);
        LongToDoubleFunction peakedness = column(upper ? StretchHistory.UPPER_PEAKEDNESS : StretchHistory.LOWER_PEAKEDNESS);
        LevelTrend peaks = LevelTrend.of(rows, peakedness, StretchHistory.RMS_DBFS, MOMENTS_RANGE_DB, MOMENTS_BEND_DB, StretchHistory.BRIGHTNESS_DB);
        return new double[] {
            widening(TopTable.When.ANY, 2, 1, 6, 12), widening(TopTable.When.LATE, 2, 2, 6, 12),
            widening(TopTable.When.EARLY, 5, 1, 3, 6), widening(TopTable.When.ANY, 10, 0.5, 3, 6),
            byRms.aboveBend(), byRms.belowBend(), byPeak.aboveBend(),
            crowding(10, 0.5), crowding(2, 1), stretchCrowding(peak),
            flatShare(), Math.log1p(Math.max(0, flatExcess(0.5))), flatGrowth(),
            ripples.aboveBend(), ripples.clarity(), LevelTrend.stepAtTheTop(rows, ripple, StretchHistory.RMS_DBFS),
            peaks.aboveBend(), peaks.clarity(), LevelTrend.stepAtTheTop(rows, peakedness, StretchHistory.RMS_DBFS)};
    }

    private LongToDoubleFunction column(int column) {
        return row -> rows.get(row, column);
    }

    /** Mean slope of quieter tops less that of the highest ones, in nepers of curvature. */
    private double widening(TopTable.When when, int strayTops, double topDb, double fromDb, double toDb) {
        double highest = table.levelAboveAllBut(upper, strayTops);
        TopTable.Sums high = table.sums(upper, when, highest - topDb, when == TopTable.When.ANY ? highest : Double.POSITIVE_INFINITY);
        TopTable.Sums low = table.sums(upper, when, highest - toDb, highest - fromDb);
        return high.count() < FEWEST_TOPS || low.count() < FEWEST_TOPS ? 0 : clamp(low.slope() - high.slope(), 2);
    }

    /** How many tops stand within so many dB of the highest, against within six times as many. */
    private double crowding(int strayTops, double withinDb) {
        double highest = table.levelAboveAllBut(upper, strayTops);
        double near = table.sums(upper, TopTable.When.ANY, highest - withinDb, highest).count();
        double wide = table.sums(upper, TopTable.When.ANY, highest - 6 * withinDb, highest).count();
        return Math.log((near + 1) / (wide + 1));
    }

    private double flatShare() {
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY);
        return high.judged() < FEWEST_TOPS ? 0 : high.flatShare();
    }

    /** More flat tops at the highest level than quieter ones let expect. */
    private double flatExcess(double topDb) {
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - topDb, Double.POSITIVE_INFINITY);
        return high.flat() - high.judged() * usualFlatShare();
    }

    private double flatGrowth() {
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY);
        return high.judged() < FEWEST_TOPS ? 0 : high.flatShare() - usualFlatShare();
    }

    /** Of quieter tops; a tenth of ten unseen ones more, so that none is never certain. */
    private double usualFlatShare() {
        TopTable.Sums low = table.sums(upper, TopTable.When.ANY, top - 12, top - 3);
        return (low.flat() + 1) / (low.judged() + 10);
    }

    /** How many stretches peak within 0.3 dB of the highest but one, against within 3 dB. */
    private double stretchCrowding(int column) {
        double highest = LevelTrend.secondHighest(rows, column);
        int near = 0;
        int wide = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            near += rows.get(row, column) > highest - 0.3 ? 1 : 0;
            wide += rows.get(row, column) > highest - 3 ? 1 : 0;
        }
        return Math.log((near + 1.0) / (wide + 1.0));
    }

    /** How much the balance of upper and lower peaks differs between the loudest and quieter stretches, dB. */
    private static double oneSidedness(HopHistory rows) {
        double top = Math.max(LevelTrend.secondHighest(rows, StretchHistory.UPPER_DBFS), LevelTrend.secondHighest(rows, StretchHistory.LOWER_DBFS));
        double[] sum = new double[2];
        int[] count = new int[2];
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            double upper = rows.get(row, StretchHistory.UPPER_DBFS);
            double lower = rows.get(row, StretchHistory.LOWER_DBFS);
            double under = top - Math.max(upper, lower);
            int which = under < 3 ? 0 : under > 6 && under < 16 ? 1 : -1;
            if (which >= 0) {
                sum[which] += upper - lower;
                count[which]++;
            }
        }
        return count[0] == 0 || count[1] == 0 ? 0 : Math.min(6, Math.abs(sum[0] / count[0] - sum[1] / count[1]));
    }

    private static double clamp(double value, double limit) {
        return Math.max(-limit, Math.min(limit, value));
    }
}
