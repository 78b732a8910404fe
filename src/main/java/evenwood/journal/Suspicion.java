package evenwood.journal;

import java.util.List;
import java.util.Optional;

/**
 * What months of takes say about the gear.
 *
 * @param kind   what is suspected
 * @param change the numbers behind it
 * @param since  the event it is counted from, if the journal knows one
 */
public record Suspicion(Kind kind, Change change, Optional<Event> since) {
    /** What can wear out so that takes tell. */
    public enum Kind { STRINGS_LOSE_TREBLE, OUTPUT_FALLS, CHANNEL_NOISIER }

    /** A loss of treble under this is not worth new strings (our choice; about twice the smallest change one hears). */
    private static final double LEAST_TREBLE_DB = 2;
    private static final double LEAST_OUTPUT_DB = 2;
    private static final double LEAST_NOISE_DB = 2;

    /** Of the interval; only one direction is told, so two histories in a hundred without a change would say so. */
    private static final double CONFIDENCE = 0.96;
    /** The rising hiss is sure already; this only asks whether gain explains it. */
    private static final double SECOND_CONFIDENCE = 0.95;

    /** A reading's takes, by the reading's name. */
    interface Points {
        List<ReadingPoint> of(String readingName);
    }

    /** Strings: the treble against the middle falls since they were put on, bit by bit. */
    static Optional<Suspicion> strings(Points points, List<Event> events) {
        Optional<Event> since = last(events, EventKind.NEW_STRINGS);
        return TrendLine.change(since(points.of(Reading.TREBLE), since, events, EventKind.PICKUP_MOVED, EventKind.NEW_PICKUP), CONFIDENCE)
            .filter(change -> change.amount() <= -LEAST_TREBLE_DB).map(change -> new Suspicion(Kind.STRINGS_LOSE_TREBLE, change, since));
    }

    /** A battery: what comes out at the same gain falls since it was put in. */
    static Optional<Suspicion> battery(Points points, List<Event> events) {
        Optional<Event> since = last(events, EventKind.NEW_BATTERY);
        return TrendLine.change(since(points.of(Reading.OUTPUT), since, events, EventKind.PICKUP_MOVED, EventKind.NEW_PICKUP), CONFIDENCE)
            .filter(change -> change.amount() <= -LEAST_OUTPUT_DB).map(change -> new Suspicion(Kind.OUTPUT_FALLS, change, since));
    }

    /** A channel: hiss rises and the playing over it does not; more gain would lift both. */
    static Optional<Suspicion> noise(Points points, List<Event> events) {
        Optional<Event> since = last(events, EventKind.NEW_CABLE);
        Optional<Change> hiss = TrendLine.change(since(points.of(Reading.HISS), since, events, EventKind.REPAIR), CONFIDENCE)
            .filter(change -> change.amount() >= LEAST_NOISE_DB);
        Optional<Change> room = TrendLine.change(since(points.of("signalToNoiseDb"), since, events, EventKind.REPAIR), SECOND_CONFIDENCE)
            .filter(change -> change.amount() <= -LEAST_NOISE_DB / 2);
        return hiss.filter(change -> room.isPresent()).map(change -> new Suspicion(Kind.CHANNEL_NOISIER, change, since));
    }

    private static Optional<Event> last(List<Event> events, EventKind kind) {
        return events.stream().filter(event -> event.kind() == kind).reduce((first, second) -> second);
    }

    /** The takes since the named event and since whatever else changes this reading by itself. */
    private static List<ReadingPoint> since(List<ReadingPoint> points, Optional<Event> named, List<Event> events, EventKind... others) {
        long from = named.map(event -> event.at().toInstant().toEpochMilli()).orElse(Long.MIN_VALUE);
        for (Event event : events) {
            if (List.of(others).contains(event.kind())) {
                from = Math.max(from, event.at().toInstant().toEpochMilli());
            }
        }
        long start = from;
        return points.stream().filter(point -> point.keptMillis() >= start).toList();
    }
}
