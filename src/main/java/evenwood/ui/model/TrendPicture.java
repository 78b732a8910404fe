package evenwood.ui.model;

import evenwood.journal.Change;
import evenwood.journal.Event;
import evenwood.journal.ReadingPoint;
import evenwood.journal.Trend;
import java.util.ArrayList;
import java.util.List;

/**
 * One reading over the months.
 *
 * @param dots   takes, or the means of neighbours where there are very many; oldest first
 * @param events what happened in between
 * @param spans  the stretches over which the reading really changed
 * @param low    lower end of the axis
 * @param high   upper end
 * @param from   words for the first day
 * @param to     words for the last
 * @param unit   of the axis
 */
public record TrendPicture(List<Dot> dots, List<Mark> events, List<Span> spans, double low, double high, String from, String to, String unit) {
    static final int MOST_DOTS = 600;
    private static final double LEAST_HALF_RANGE = 3;
    private static final double MARGIN = 0.15;

    /** @param part of the time from first to last take, 0 to 1 */
    public record Dot(double part, double value) { }

    /** @param name what happened */
    public record Mark(double part, String name) { }

    /** From here to there, by so much; not a drawn fit but what the change says. */
    public record Span(double from, double to, double amount) { }

    public boolean isEmpty() {
        return dots.isEmpty();
    }

    public static TrendPicture of(Trend trend, JournalWords words) {
        List<ReadingPoint> points = trend.points();
        if (points.isEmpty()) {
            return new TrendPicture(List.of(), List.of(), List.of(), 0, 1, "", "", trend.reading().unit());
        }
        long first = points.get(0).keptMillis();
        double length = Math.max(1, points.get(points.size() - 1).keptMillis() - first);
        List<Dot> dots = dots(points, first, length);
        double least = dots.stream().mapToDouble(Dot::value).min().orElse(0);
        double most = dots.stream().mapToDouble(Dot::value).max().orElse(0);
        double half = Math.max(LEAST_HALF_RANGE, (most - least) / 2 * (1 + MARGIN));
        double middle = (least + most) / 2;
        List<Mark> marks = trend.events().stream().map(event -> new Mark((millis(event) - first) / length, words.event(event))).toList();
        List<Span> spans = trend.changes().stream().map(change -> span(change, first, length)).toList();
        return new TrendPicture(dots, marks, spans, middle - half, middle + half, words.day(java.time.Instant.ofEpochMilli(first)),
            words.day(java.time.Instant.ofEpochMilli(points.get(points.size() - 1).keptMillis())), trend.reading().unit());
    }

    private static Span span(Change change, long first, double length) {
        return new Span((change.from().toEpochMilli() - first) / length, (change.to().toEpochMilli() - first) / length, change.amount());
    }

    private static List<Dot> dots(List<ReadingPoint> points, long first, double length) {
        int each = (points.size() + MOST_DOTS - 1) / MOST_DOTS;
        List<Dot> dots = new ArrayList<>();
        for (int start = 0; start < points.size(); start += each) {
            List<ReadingPoint> some = points.subList(start, Math.min(points.size(), start + each));
            dots.add(new Dot(some.stream().mapToDouble(point -> (point.keptMillis() - first) / length).average().orElseThrow(),
                some.stream().mapToDouble(ReadingPoint::value).average().orElseThrow()));
        }
        return dots;
    }

    private static long millis(Event event) {
        return event.at().toInstant().toEpochMilli();
    }
}
