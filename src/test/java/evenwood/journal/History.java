package evenwood.journal;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * Months of imagined takes: every reading scatters from take to take as players do, sometimes far; what is to be found out is
 * added by the test. The scatter: 1.2 dB in treble, 2 dB in playing, 1 dB in hiss, one take in twelve is another song and three times off.
 */
public final class History {
    private static final OffsetDateTime START = OffsetDateTime.of(2026, 1, 5, 19, 0, 0, 0, ZoneOffset.UTC);
    private static final double TREBLE_DEVIATION_DB = 1.2;
    private static final double PLAYING_DEVIATION_DB = 2;
    private static final double HISS_DEVIATION_DB = 1;
    private static final double ODD_SHARE = 1.0 / 12;
    private static final double ODD_FACTOR = 3;

    private final SplittableRandom random;
    private final List<Double> days = new ArrayList<>();
    private final Map<String, List<ReadingPoint>> points = new HashMap<>();
    private final List<Event> events = new ArrayList<>();

    /** A reading's value on a day of the history, in decibels on top of what is usual. */
    public interface Course {
        double db(double day);
    }

    public static final Course NONE = day -> 0;

    /** @param takes how many, one to four days apart */
    public History(long seed, int takes) {
        random = new SplittableRandom(seed);
        double day = 0;
        for (int i = 0; i < takes; i++) {
            day += 1 + 3 * random.nextDouble();
            days.add(day);
        }
    }

    public double lastDay() {
        return days.get(days.size() - 1);
    }

    /** @param gain what the player turned the channel up; it lifts playing and hiss alike */
    public History with(Course treble, Course output, Course hiss, Course gain) {
        for (int i = 0; i < days.size(); i++) {
            double day = days.get(i);
            double odd = random.nextDouble() < ODD_SHARE ? ODD_FACTOR : 1;
            double playing = -24 + output.db(day) + gain.db(day) + odd * PLAYING_DEVIATION_DB * random.nextGaussian();
            double noise = -78 + hiss.db(day) + gain.db(day) + odd * HISS_DEVIATION_DB * random.nextGaussian();
            add(i, Reading.TREBLE, -11 + treble.db(day) + odd * TREBLE_DEVIATION_DB * random.nextGaussian());
            add(i, Reading.OUTPUT, playing - gain.db(day));
            add(i, Reading.PLAYING, playing);
            add(i, Reading.HISS, noise);
            add(i, "signalToNoiseDb", playing - noise);
        }
        return this;
    }

    private void add(int take, String name, double value) {
        points.computeIfAbsent(name, each -> new ArrayList<>()).add(new ReadingPoint(take + 1, millis(days.get(take)), value));
    }

    public History event(double day, EventKind kind) {
        events.add(new Event("e" + events.size(), Instant.ofEpochMilli(millis(day)).atOffset(ZoneOffset.UTC), kind, "", ""));
        return this;
    }

    public List<ReadingPoint> points(String name) {
        return points.get(name);
    }

    public List<Event> events() {
        return events;
    }

    /** What the journal would suspect. */
    public List<Suspicion.Kind> suspicions() {
        List<Suspicion.Kind> found = new ArrayList<>();
        Suspicion.strings(this::points, events).ifPresent(each -> found.add(each.kind()));
        Suspicion.battery(this::points, events).ifPresent(each -> found.add(each.kind()));
        Suspicion.noise(this::points, events).ifPresent(each -> found.add(each.kind()));
        return found;
    }

    public Trend trend(String name) {
        return Trend.of(Reading.named(name).orElseThrow(), points(name), events);
    }

    private static long millis(double day) {
        return START.toInstant().toEpochMilli() + Math.round(day * 86_400_000);
    }
}
