package evenwood.measure;

/**
 * The longest stretch up to now over which a level has grown about evenly in dB, as a howl grows and a note does not.
 *
 * <p>In: levels in dB, newest first, one a hop. Out: hops, rise, slope, and how far the levels stray from the line.
 * <p>How: least-squares lines over 4 hops and more; slopes of the older and newer half must not differ too much. Source:
 * the slope-deviation feature (IMSD) of van Waterschoot and Moonen, JAES 58(11), 2010, as a regression.
 * <p>Thread: one owner; nothing here allocates.
 */
final class GrowthLine {
    private static final int SHORTEST_HOPS = 4;
    private static final double LEAST_RISE_DB = 6;
    private static final double MOST_STRAY_DB = 0.6;
    private static final double MOST_STRAY_SHARE = 0.06;
    private static final double MOST_STEEPER_LATER = 2.5;
    /** A beat or a swell flattens as it comes to its top; a loop does not before the amplifier's limit. */
    private static final double MOST_STEEPER_EARLIER = 1.7;

    private static final double LEAST_OF_SLOPE_NOW = 0.65;
    private static final int FEWEST_TO_TELL = 3;

    private int hops;
    private double slopeDbPerHop;
    private double strayDb;

    /** Looks at the newest {@code count} levels; the answers hold until the next call. */
    boolean find(double[] levelsDb, int count) {
        hops = 0;
        double sum = 0;
        double sumTimes = 0;
        double sumSquares = 0;
        for (int n = 1; n <= count; n++) {
            double level = levelsDb[n - 1];
            sum += level;
            sumTimes -= (n - 1) * level;
            sumSquares += level * level;
            if (n >= SHORTEST_HOPS) {
                double mean = sum / n;
                double covariance = sumTimes / n + (n - 1) / 2.0 * mean;
                double slope = 12 * covariance / (n * (double) n - 1);
                double rise = slope * (n - 1);
                if (rise < LEAST_RISE_DB) {
                    continue;
                }
                double stray = Math.sqrt(Math.max(0, sumSquares / n - mean * mean - slope * covariance));
                if (stray <= MOST_STRAY_DB + MOST_STRAY_SHARE * rise && isEven(levelsDb, n, slope)) {
                    hops = n;
                    slopeDbPerHop = slope;
                    strayDb = stray;
                }
            }
        }
        return hops > 0;
    }

    int hops() {
        return hops;
    }

    double slopeDbPerHop() {
        return slopeDbPerHop;
    }

    double riseDb() {
        return slopeDbPerHop * (hops - 1);
    }

    /** Root mean square distance from the line. */
    double strayDb() {
        return strayDb;
    }

    private static boolean isStillGrowing(double[] levelsDb, int n, double slopeDbPerHop) {
        int third = n / 3;
        return third < FEWEST_TO_TELL || (levelsDb[0] - levelsDb[third]) / third > LEAST_OF_SLOPE_NOW * slopeDbPerHop;
    }

    private static boolean isEven(double[] levelsDb, int n, double slope) {
        int half = n / 2;
        double newer = (levelsDb[0] - levelsDb[half]) / half;
        double older = (levelsDb[half] - levelsDb[n - 1]) / (n - 1 - half);
        return older > 0 && isStillGrowing(levelsDb, n, slope) && newer > older / MOST_STEEPER_EARLIER && newer < older * MOST_STEEPER_LATER;
    }
}
