package evenwood.measure;

import evenwood.ReferenceTable;
import java.util.List;

/** The attenuation a third-octave filter of class 1 must and may have. Source: IEC 61260-1:2014 table 1 (CSV beside). */
final class ThirdOctaveMask {
    private record Point(double ratio, double leastDb, double mostDb) { }

    private final List<Point> upper = ReferenceTable.read("iec61260-class1-mask.csv").stream()
        .filter(row -> row.number("bands_per_octave") == 3 && !row.text("side").equals("lower"))
        .map(row -> new Point(row.number("normalised_frequency"), row.number("class1_min_att_db"), row.number("class1_max_att_db")))
        .toList();

    /** Lowest permitted attenuation at a frequency relative to the band's centre. */
    double leastDb(double ratio) {
        double up = Math.max(ratio, 1 / ratio);
        return up < edge() ? upper.get(0).leastDb : between(up, upper.stream().filter(p -> p.ratio >= edge() && p.leastDb > 0).toList(), true);
    }

    /** Highest permitted attenuation; +Infinity outside the band. */
    double mostDb(double ratio) {
        double up = Math.max(ratio, 1 / ratio);
        return up >= edge() ? Double.POSITIVE_INFINITY : between(up, upper.stream().filter(p -> Double.isFinite(p.mostDb)).toList(), false);
    }

    private double edge() {
        return upper.get(4).ratio;
    }

    /** Linear in the logarithm of frequency, as the standard has it. */
    private static double between(double ratio, List<Point> points, boolean least) {
        Point before = points.get(0);
        for (Point after : points) {
            if (ratio <= after.ratio && after.ratio > before.ratio) {
                double share = Math.log(ratio / before.ratio) / Math.log(after.ratio / before.ratio);
                return least ? before.leastDb + share * (after.leastDb - before.leastDb) : before.mostDb + share * (after.mostDb - before.mostDb);
            }
            before = after;
        }
        return least ? before.leastDb : before.mostDb;
    }
}
