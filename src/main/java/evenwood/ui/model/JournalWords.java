package evenwood.ui.model;

import evenwood.journal.Change;
import evenwood.journal.Event;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeLine;
import evenwood.journal.Trend;
import evenwood.judge.Statement;
import evenwood.measure.TakeReadings;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the journal page says, in the player's language. */
public final class JournalWords {
    private final Words words;
    private final DateTimeFormatter day;
    private final DateTimeFormatter moment;

    public JournalWords(Words words) {
        this.words = words;
        day = DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM).withLocale(words.locale());
        moment = DateTimeFormatter.ofLocalizedDateTime(FormatStyle.MEDIUM, FormatStyle.SHORT).withLocale(words.locale());
    }

    /** When it was kept. */
    public String when(TakeLine take) {
        return words.say("journal.when", take.id(), moment.format(take.keptAt()));
    }

    /** "Sep 12, 2026, 8:15 PM" */
    public String moment(OffsetDateTime at) {
        return moment.format(at);
    }

    /** Whose take it is, for the head of a sheet. */
    public String title(TakeLine take) {
        String title = take.rigName().isEmpty() ? instrument(take.instrument()) : take.rigName();
        return title.isEmpty() ? take.name() : title;
    }

    /** When and where, and what the journal calls it. */
    public String where(TakeLine take) {
        return Stream.of(moment(take.keptAt()), take.venue(), words.say("journal.take-number", take.id())).filter(part -> !part.isEmpty())
            .collect(Collectors.joining(words.say("journal.between")));
    }

    /** What was played, where, and what the player wrote. */
    public String about(TakeLine take) {
        List<String> parts = new ArrayList<>();
        parts.add(instrument(take.instrument().isEmpty() ? take.rigName() : take.instrument()));
        parts.add(take.venue());
        parts.add(take.note());
        parts.addAll(take.tags());
        String about = parts.stream().filter(part -> !part.isEmpty()).collect(Collectors.joining(words.say("journal.between")));
        return about.isEmpty() ? take.name() : about;
    }

    /** What was found: "Hum, Boomy", or that all was well. */
    public String found(TakeLine take) {
        return take.faults().isEmpty() ? words.say("journal.well") : take.faults().stream().map(this::fault).collect(Collectors.joining(", "));
    }

    private String fault(String withSeverity) {
        String[] parts = withSeverity.split(":");
        String name = words.sayOr("fault." + parts[0], parts[0]);
        return parts.length < 2 ? name : words.say("journal.fault", name, words.sayOr("severity." + parts[1], parts[1]));
    }

    public String instrument(String id) {
        return words.sayOr("preset.instruments." + id, id);
    }

    public String event(Event event) {
        return words.say("journal.event." + event.kind().id());
    }

    /** How loud a take was, and how quiet between the notes. */
    public String levels(TakeReadings readings) {
        return words.say("journal.levels", words.level(readings.truePeak().truePeakDbtp(), "unit.dbtp"), words.level(readings.dynamics().usualDbfs(), "unit.dbfs"),
            words.level(readings.noise().floorDbfs(), "unit.dbfs"));
    }

    /** When something happened, what, and the player's note. */
    public String line(Event event) {
        return Stream.of(day(event.at().toInstant()), event(event), instrument(event.instrument()), event.note()).filter(part -> !part.isEmpty())
            .collect(Collectors.joining(words.say("journal.between")));
    }

    /** What had happened before a take, and how long before. */
    public String before(Event event, TakeLine take) {
        return words.say("journal.before", event(event), ChronoUnit.DAYS.between(event.at(), take.keptAt()),
            event.note().isEmpty() ? "" : words.say("journal.between") + event.note());
    }

    public String day(Instant time) {
        return day.format(time.atZone(ZoneId.systemDefault()));
    }

    /** What the numbers of a trend support. */
    public List<String> supported(Trend trend) {
        if (!trend.isEnough()) {
            return List.of(sentence(Statement.of("journal.trend-too-few", trend.points().size())));
        }
        if (trend.changes().isEmpty()) {
            return List.of(sentence(Statement.of("journal.trend-steady", percent(Trend.CONFIDENCE))));
        }
        return trend.changes().stream().map(change -> change(change, trend.reading().differenceUnit())).toList();
    }

    private String change(Change change, String unit) {
        String at = change.event().map(this::event).orElse("");
        return sentence(Statement.of("journal.change-" + change.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'), change.amount() > 0 ? 1 : 0,
            Math.abs(change.amount()), unit, least(change), most(change), percent(change.confidence()), day(change.from()), day(change.to()), at));
    }

    public String suspicion(Suspicion suspicion) {
        Change change = suspicion.change();
        String since = words.say(suspicion.since().map(event -> Statement.of("journal.since-event", day(event.at().toInstant())))
            .orElseGet(() -> Statement.of("journal.since-day", day(change.from()))));
        return sentence(Statement.of("journal." + suspicion.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'), since, Math.abs(change.amount()),
            least(change), most(change), percent(change.confidence())));
    }

    /** What differs between two takes beyond tone and readings: settings and findings. */
    public List<String> differences(TakeComparison both) {
        List<String> lines = new ArrayList<>();
        both.settings().forEach(setting -> lines.add(words.say("journal.setting", control(setting.control()), position(setting.before()), position(setting.after()))));
        if (!both.gone().isEmpty()) {
            lines.add(sentence(Statement.of("journal.gone", both.gone().stream().map(this::fault).collect(Collectors.joining(", ")))));
        }
        if (!both.come().isEmpty()) {
            lines.add(sentence(Statement.of("journal.come", both.come().stream().map(this::fault).collect(Collectors.joining(", ")))));
        }
        if (lines.isEmpty()) {
            lines.add(words.say("journal.no-difference"));
        }
        return lines;
    }

    private String position(Optional<String> position) {
        return position.map(each -> Positions.say(each, words)).orElse(words.say("journal.not-there"));
    }

    public String control(String name) {
        return words.sayOr("control." + name.toLowerCase(Locale.ROOT).replace(' ', '-'), name);
    }

    public String tone(TakeComparison both) {
        return sentence(Statement.of(both.noteWise() ? "journal.tone-of-notes" : "journal.tone-of-takes"));
    }

    public String reading(String name) {
        return words.say("journal.reading." + name.toLowerCase(Locale.ROOT));
    }

    private String sentence(Statement statement) {
        return words.say("move.why", words.say(statement));
    }

    private static double least(Change change) {
        return Math.min(Math.abs(change.lowest()), Math.abs(change.highest()));
    }

    private static double most(Change change) {
        return Math.max(Math.abs(change.lowest()), Math.abs(change.highest()));
    }

    private static long percent(double confidence) {
        return Math.round(100 * confidence);
    }
}
