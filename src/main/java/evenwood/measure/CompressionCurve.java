package evenwood.measure;

/**
 * How much the tops of one polarity are short, by the level they reach, added up from the roundness of the tops.
 *
 * <p>How: the mean slope of the tops ({@link HalfWaveShapes}) at each level, less that of the quieter tops 8 to 16 dB
 * under the highest, is the local slope s of the characteristic in dB per dB. Going up, s can only fall (isotonic
 * regression by pooling adjacent violators: Ayer et al. 1955, from memory). From level y to y + dy the input rose by dy/s,
 * so the compression grows by (1/s − 1)·dy. Where it passes 1 dB is the onset.
 *
 * @param onsetDbfs     level above which tops are at least 1 dB short; +Infinity when none reached it
 * @param compressionDb how much the highest tops are short; 0 when there is nothing to compare with
 * @param topDbfs       level of the highest tops but two; −Infinity when there are none
 * @param flatShare     which part of the tops within 1 dB of that are flat, 0 to 1
 */
record CompressionCurve(double onsetDbfs, double compressionDb, double topDbfs, double flatShare) {

    private static final double STEP_DB = 0.5;
    private static final double DEPTH_DB = 16;
    private static final double REFERENCE_DB = 8;
    private static final int FEWEST_REFERENCES = 10;
    /** The two highest tops may be clicks. */
    private static final int STRAY_TOPS = 2;
    private static final double ONSET_SHORT_DB = 1;
    /** Flatter than 1 dB in 20 cannot be told from flat. */
    private static final double LEAST_SLOPE = Math.log(1 / 20.0);

    static CompressionCurve of(TopTable table, boolean upper) {
        double top = table.levelAboveAllBut(upper, STRAY_TOPS);
        TopTable.Sums reference = table.sums(upper, TopTable.When.ANY, top - DEPTH_DB, top - REFERENCE_DB);
        if (reference.count() < FEWEST_REFERENCES) {
            return new CompressionCurve(Double.POSITIVE_INFINITY, 0, top, 0);
        }
        int steps = (int) (DEPTH_DB / STEP_DB);
        double[] slope = new double[steps];
        double[] weight = new double[steps];
        for (int i = 0; i < steps; i++) {
            double low = top - DEPTH_DB + i * STEP_DB;
            boolean last = i == steps - 1;
            TopTable.Sums sums = table.sums(upper, TopTable.When.ANY, low, last ? Double.POSITIVE_INFINITY : low + STEP_DB);
            slope[i] = sums.count() == 0 ? 0 : sums.slope() - reference.slope();
            weight[i] = sums.count() + 0.5;
        }
        makeFalling(slope, weight);
        double flatShare = table.sums(upper, TopTable.When.ANY, top - 1, Double.POSITIVE_INFINITY).flatShare();
        return addUp(slope, top, flatShare);
    }

    private static CompressionCurve addUp(double[] slope, double top, double flatShare) {
        double compressionDb = 0;
        double onset = Double.POSITIVE_INFINITY;
        for (int i = 0; i < slope.length; i++) {
            double growth = (Math.exp(-Math.max(LEAST_SLOPE, Math.min(0, slope[i]))) - 1) * STEP_DB;
            if (onset == Double.POSITIVE_INFINITY && compressionDb + growth >= ONSET_SHORT_DB) {
                onset = top - DEPTH_DB + (i + (ONSET_SHORT_DB - compressionDb) / growth) * STEP_DB;
            }
            compressionDb += growth;
        }
        return new CompressionCurve(onset, compressionDb, top, flatShare);
    }

    /** Pools neighbours that rise, until none does. */
    private static void makeFalling(double[] value, double[] weight) {
        int[] poolEnd = new int[value.length];
        int pools = 0;
        double[] mean = new double[value.length];
        double[] mass = new double[value.length];
        for (int i = 0; i < value.length; i++) {
            mean[pools] = value[i];
            mass[pools] = weight[i];
            poolEnd[pools++] = i + 1;
            while (pools > 1 && mean[pools - 2] < mean[pools - 1]) {
                double both = mass[pools - 2] + mass[pools - 1];
                mean[pools - 2] = (mean[pools - 2] * mass[pools - 2] + mean[pools - 1] * mass[pools - 1]) / both;
                mass[pools - 2] = both;
                poolEnd[pools - 2] = i + 1;
                pools--;
            }
        }
        int i = 0;
        for (int pool = 0; pool < pools; pool++) {
            while (i < poolEnd[pool]) {
                value[i++] = mean[pool];
            }
        }
    }
}
