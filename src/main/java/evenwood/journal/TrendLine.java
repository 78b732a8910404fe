package evenwood.journal;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.stat.StatUtils;

/**
 * Whether a stretch of takes drifts or jumps.
 *
 * <p>How: a drift is told when the slope's interval ({@link TheilSen}) leaves out 0, a jump when {@link ChangePoint} finds one
 * and the interval of the {@link Shift} leaves out 0; each at half the allowed chance. Where both speak, the jump is told only when the values
 * lie clearly closer to it (mean distance): its day was picked to fit.
 * <p>Limits: at least {@value #FEWEST_TAKES} takes on at least {@value #SHORTEST_DAYS} days.
 */
final class TrendLine {
    static final int FEWEST_TAKES = 8;
    static final int SHORTEST_DAYS = 2;
    private static final int FEWEST_BESIDE_JUMP = 4;
    private static final double JUMP_MUST_BE_NEARER = 0.9;

    private final List<ReadingPoint> points;
    private final double[] days;
    private final double[] values;
    private final double confidence;

    private TrendLine(List<ReadingPoint> points, double confidence) {
        this.points = points;
        this.confidence = confidence;
        days = points.stream().mapToDouble(ReadingPoint::days).toArray();
        values = points.stream().mapToDouble(ReadingPoint::value).toArray();
    }

    static boolean isEnough(List<ReadingPoint> points) {
        return points.size() >= FEWEST_TAKES && points.get(points.size() - 1).days() - points.get(0).days() >= SHORTEST_DAYS;
    }

    /** @param points oldest first */
    static Optional<Change> change(List<ReadingPoint> points, double confidence) {
        if (!isEnough(points)) {
            return Optional.empty();
        }
        TrendLine line = new TrendLine(points, confidence);
        double each = 1 - (1 - confidence) / 2;
        TheilSen slope = TheilSen.of(line.days, line.values, each);
        Optional<Change> drift = line.drift(slope);
        Optional<Change> jump = line.jump(each);
        if (drift.isPresent() && jump.isPresent()) {
            return line.distanceFromJump(jump.get()) < JUMP_MUST_BE_NEARER * line.distanceFromLine(slope) ? jump : drift;
        }
        return drift.or(() -> jump);
    }

    private Optional<Change> drift(TheilSen slope) {
        if (slope.lowest() <= 0 && slope.highest() >= 0) {
            return Optional.empty();
        }
        double span = days[days.length - 1] - days[0];
        return Optional.of(new Change(Change.Kind.DRIFT, time(0), time(points.size() - 1), slope.perDay() * span, slope.lowest() * span,
            slope.highest() * span, confidence, points.size(), Optional.empty()));
    }

    private Optional<Change> jump(double each) {
        ChangePoint point = ChangePoint.of(values);
        int first = point.first();
        if (point.chance() > 1 - each || first < FEWEST_BESIDE_JUMP || values.length - first < FEWEST_BESIDE_JUMP) {
            return Optional.empty();
        }
        Shift shift = Shift.between(part(0, first), part(first, values.length), each);
        if (shift.lowest() <= 0 && shift.highest() >= 0) {
            return Optional.empty();
        }
        return Optional.of(new Change(Change.Kind.JUMP, time(first - 1), time(first), shift.amount(), shift.lowest(), shift.highest(), confidence,
            points.size(), Optional.empty()));
    }

    private double distanceFromLine(TheilSen slope) {
        return IntStream.range(0, values.length).mapToDouble(i -> Math.abs(values[i] - slope.start() - slope.perDay() * (days[i] - days[0]))).average().orElse(0);
    }

    private double distanceFromJump(Change jump) {
        int first = (int) points.stream().filter(point -> point.keptMillis() < jump.to().toEpochMilli()).count();
        double before = StatUtils.percentile(values, 0, first, 50);
        double after = StatUtils.percentile(values, first, values.length - first, 50);
        return IntStream.range(0, values.length).mapToDouble(i -> Math.abs(values[i] - (i < first ? before : after))).average().orElse(0);
    }

    private double[] part(int from, int to) {
        return java.util.Arrays.copyOfRange(values, from, to);
    }

    private Instant time(int index) {
        return Instant.ofEpochMilli(points.get(index).keptMillis());
    }
}
