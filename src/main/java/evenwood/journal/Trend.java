package evenwood.journal;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One reading over time, with what happened in between and what the numbers support.
 *
 * <p>How: at each event the takes around it are compared (at most {@value #MOST_BESIDE_EVENT} on either side, not beyond the next
 * event), all events together at the stated confidence; then the stretch since the last event that changed something is looked
 * at by {@link TrendLine}.
 *
 * @param reading which
 * @param points  oldest first
 * @param events  those within the time of the points, oldest first
 * @param changes none is an answer too: nothing but chance is seen
 */
public record Trend(Reading reading, List<ReadingPoint> points, List<Event> events, List<Change> changes) {
    /** Of every change that is told: two histories in a hundred without any change would say so (docs/accuracy.md, TrendEvaluation). */
    public static final double CONFIDENCE = 0.98;
    private static final int MOST_BESIDE_EVENT = 20;
    private static final int FEWEST_BESIDE_EVENT = 5;

    public Trend {
        points = List.copyOf(points);
        events = List.copyOf(events);
        changes = List.copyOf(changes);
    }

    /** Whether there are enough takes to see a drift at all. */
    public boolean isEnough() {
        return TrendLine.isEnough(points);
    }

    static Trend of(Reading reading, List<ReadingPoint> points, List<Event> events) {
        List<Event> inside = points.isEmpty() ? List.of() : events.stream().filter(event -> millis(event) > points.get(0).keptMillis()
            && millis(event) <= points.get(points.size() - 1).keptMillis()).toList();
        List<Change> changes = new ArrayList<>();
        long since = Long.MIN_VALUE;
        for (int i = 0; i < inside.size(); i++) {
            Optional<Change> change = atEvent(points, inside, i);
            if (change.isPresent()) {
                changes.add(change.get());
                since = millis(inside.get(i));
            }
        }
        long start = since;
        TrendLine.change(points.stream().filter(point -> point.keptMillis() >= start).toList(), CONFIDENCE).ifPresent(changes::add);
        return new Trend(reading, points, inside, changes);
    }

    private static Optional<Change> atEvent(List<ReadingPoint> points, List<Event> events, int index) {
        long at = millis(events.get(index));
        long earliest = index == 0 ? Long.MIN_VALUE : millis(events.get(index - 1));
        long latest = index == events.size() - 1 ? Long.MAX_VALUE : millis(events.get(index + 1));
        List<ReadingPoint> before = points.stream().filter(point -> point.keptMillis() >= earliest && point.keptMillis() < at).toList();
        List<ReadingPoint> after = points.stream().filter(point -> point.keptMillis() >= at && point.keptMillis() < latest).limit(MOST_BESIDE_EVENT).toList();
        before = before.subList(Math.max(0, before.size() - MOST_BESIDE_EVENT), before.size());
        if (before.size() < FEWEST_BESIDE_EVENT || after.size() < FEWEST_BESIDE_EVENT) {
            return Optional.empty();
        }
        double each = 1 - (1 - CONFIDENCE) / events.size();
        Shift shift = Shift.between(values(before), values(after), each);
        if (shift.chance() > 1 - each || shift.lowest() <= 0 && shift.highest() >= 0) {
            return Optional.empty();
        }
        return Optional.of(new Change(Change.Kind.AT_EVENT, Instant.ofEpochMilli(before.get(before.size() - 1).keptMillis()),
            Instant.ofEpochMilli(after.get(0).keptMillis()), shift.amount(), shift.lowest(), shift.highest(), CONFIDENCE,
            before.size() + after.size(), Optional.of(events.get(index))));
    }

    private static double[] values(List<ReadingPoint> points) {
        return points.stream().mapToDouble(ReadingPoint::value).toArray();
    }

    private static long millis(Event event) {
        return event.at().toInstant().toEpochMilli();
    }
}
