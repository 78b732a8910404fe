package evenwood.ui.model;

import evenwood.journal.Change;
import evenwood.journal.Event;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeLine;
import evenwood.journal.Trend;
import evenwood.judge.Statement;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** What the journal page says, in the player's language. */
public final class JournalWords {
    /** Smaller differences of level nobody notices; our choice. */
    private static final double LEAST_TOLD_DB = 0.5;

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

    /** What differs between two takes beyond the tone: settings, findings, readings that no chance explains. */
    public List<String> differences(TakeComparison both) {
        List<String> lines = new ArrayList<>();
        both.settings().forEach(setting -> lines.add(words.say("journal.setting", control(setting.control()), setting.before().orElse(words.say("journal.not-there")),
            setting.after().orElse(words.say("journal.not-there")))));
        if (!both.gone().isEmpty()) {
            lines.add(sentence(Statement.of("journal.gone", both.gone().stream().map(this::fault).collect(Collectors.joining(", ")))));
        }
        if (!both.come().isEmpty()) {
            lines.add(sentence(Statement.of("journal.come", both.come().stream().map(this::fault).collect(Collectors.joining(", ")))));
        }
        for (TakeComparison.ReadingChange change : both.readings()) {
            if (change.isReal() && Math.abs(change.difference()) >= LEAST_TOLD_DB && JournalModel.READINGS.contains(change.reading().name())) {
                lines.add(words.say("journal.reading-changed", reading(change.reading().name()), words.number(change.before(), 1), words.number(change.after(), 1),
                    change.reading().unit()));
            }
        }
        if (lines.isEmpty()) {
            lines.add(words.say("journal.no-difference"));
        }
        boolean unknown = both.readings().stream().allMatch(change -> change.scatter().isEmpty());
        if (unknown) {
            lines.add(words.say("journal.scatter-unknown"));
        }
        return lines;
    }

    private String control(String name) {
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
