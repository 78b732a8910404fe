package evenwood.measure;

/**
 * The numbers from which {@link DistortionModel} tells distorted from clean playing; pure arithmetic.
 *
 * <p>How: each compares the hardest playing with quieter playing of the same take, so that instrument, player and tone
 * cancel: (1) tops grow wider against the stretch's own autocorrelation; (2) crest stops growing with the level
 * ({@link CrestGrowth}: peak against what is left of the note); (3) peaks
 * crowd under a ceiling; (4) tops are flat; (5) one side is held back. Those taken of both sides enter as the smaller and
 * the larger of the two, so that polarity does not matter.
 */
final class DistortionFeatures {
    static final String[] NAMES = {
        "widening-least", "widening-most", "late-widening-least", "late-widening-most", "attack-widening-least",
        "attack-widening-most", "crest-by-rms-least", "crest-by-rms-most", "crest-by-peak-least", "crest-by-peak-most",
        "crowding-near-least", "crowding-near-most", "crowding-wide-least", "crowding-wide-most", "flat-least", "flat-most",
        "one-sidedness", "near-widening-least", "near-widening-most", "flat-excess-least", "flat-excess-most", "flat-growth-least",
        "flat-growth-most", "stretch-crowding-least", "stretch-crowding-most", "crest-by-rms-below-least", "crest-by-rms-below-most"};

    private static final int FEWEST_TOPS = 3;

    private final TopTable table;
    private final HopHistory rows;
    private final double[] values = new double[NAMES.length];
    private int filled;

    private DistortionFeatures(TopTable table, HopHistory rows) {
        this.table = table;
        this.rows = rows;
    }

    static double[] of(TopTable table, HopHistory rows) {
        DistortionFeatures features = new DistortionFeatures(table, rows);
        features.fill();
        return features.values;
    }

    private void fill() {
        both(widening(true, TopTable.When.ANY, 2, 1, 6, 12), widening(false, TopTable.When.ANY, 2, 1, 6, 12));
        both(widening(true, TopTable.When.LATE, 2, 2, 6, 12), widening(false, TopTable.When.LATE, 2, 2, 6, 12));
        both(widening(true, TopTable.When.EARLY, 5, 1, 3, 6), widening(false, TopTable.When.EARLY, 5, 1, 3, 6));
        CrestGrowth upperByRms = CrestGrowth.of(rows, StretchHistory.UPPER_DBFS, StretchHistory.RMS_DBFS);
        CrestGrowth lowerByRms = CrestGrowth.of(rows, StretchHistory.LOWER_DBFS, StretchHistory.RMS_DBFS);
        both(upperByRms.aboveBend(), lowerByRms.aboveBend());
        both(CrestGrowth.of(rows, StretchHistory.UPPER_DBFS, StretchHistory.UPPER_DBFS).aboveBend(),
            CrestGrowth.of(rows, StretchHistory.LOWER_DBFS, StretchHistory.LOWER_DBFS).aboveBend());
        both(crowding(true, 10, 0.5), crowding(false, 10, 0.5));
        both(crowding(true, 2, 1), crowding(false, 2, 1));
        both(flatShare(true), flatShare(false));
        values[filled++] = oneSidedness();
        both(widening(true, TopTable.When.ANY, 10, 0.5, 3, 6), widening(false, TopTable.When.ANY, 10, 0.5, 3, 6));
        both(Math.log1p(Math.max(0, flatExcess(true, 0.5))), Math.log1p(Math.max(0, flatExcess(false, 0.5))));
        both(flatGrowth(true), flatGrowth(false));
        both(stretchCrowding(StretchHistory.UPPER_DBFS), stretchCrowding(StretchHistory.LOWER_DBFS));
        both(upperByRms.belowBend(), lowerByRms.belowBend());
    }

    private void both(double upper, double lower) {
        values[filled++] = Math.min(upper, lower);
        values[filled++] = Math.max(upper, lower);
    }

    /** Mean slope of quieter tops less that of the highest ones, in nepers of curvature. */
    private double widening(boolean upper, TopTable.When when, int strayTops, double topDb, double fromDb, double toDb) {
        double top = table.levelAboveAllBut(upper, strayTops);
        TopTable.Sums high = table.sums(upper, when, top - topDb, when == TopTable.When.ANY ? top : Double.POSITIVE_INFINITY);
        TopTable.Sums low = table.sums(upper, when, top - toDb, top - fromDb);
        return high.count() < FEWEST_TOPS || low.count() < FEWEST_TOPS ? 0 : clamp(low.slope() - high.slope(), 2);
    }

    /** How many tops stand within so many dB of the highest, against within six times as many. */
    private double crowding(boolean upper, int strayTops, double withinDb) {
        double top = table.levelAboveAllBut(upper, strayTops);
        double near = table.sums(upper, TopTable.When.ANY, top - withinDb, top).count();
        double wide = table.sums(upper, TopTable.When.ANY, top - 6 * withinDb, top).count();
        return Math.log((near + 1) / (wide + 1));
    }

    private double flatShare(boolean upper) {
        double top = table.levelAboveAllBut(upper, 2);
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY);
        return high.judged() < FEWEST_TOPS ? 0 : high.flatShare();
    }

    /** More flat tops at the highest level than quieter ones let expect. */
    private double flatExcess(boolean upper, double topDb) {
        double top = table.levelAboveAllBut(upper, 2);
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - topDb, Double.POSITIVE_INFINITY);
        return high.flat() - high.judged() * usualFlatShare(upper, top);
    }

    private double flatGrowth(boolean upper) {
        double top = table.levelAboveAllBut(upper, 2);
        TopTable.Sums high = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY);
        return high.judged() < FEWEST_TOPS ? 0 : high.flatShare() - usualFlatShare(upper, top);
    }

    /** Of quieter tops; a tenth of ten unseen ones more, so that none is never certain. */
    private double usualFlatShare(boolean upper, double top) {
        TopTable.Sums low = table.sums(upper, TopTable.When.ANY, top - 12, top - 3);
        return (low.flat() + 1) / (low.judged() + 10);
    }

    /** How many stretches peak within 0.3 dB of the highest but one, against within 3 dB. */
    private double stretchCrowding(int column) {
        double top = CrestGrowth.secondHighest(rows, column);
        int near = 0;
        int wide = 0;
        for (long row = rows.firstHop(); row < rows.endHop(); row++) {
            near += rows.get(row, column) > top - 0.3 ? 1 : 0;
            wide += rows.get(row, column) > top - 3 ? 1 : 0;
        }
        return Math.log((near + 1.0) / (wide + 1.0));
    }

    /** How much the balance of upper and lower peaks differs between the loudest and quieter stretches, dB. */
    private double oneSidedness() {
        double top = Math.max(CrestGrowth.secondHighest(rows, StretchHistory.UPPER_DBFS), CrestGrowth.secondHighest(rows, StretchHistory.LOWER_DBFS));
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
