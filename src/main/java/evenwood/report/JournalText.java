package evenwood.report;

import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.KeptTake;
import evenwood.journal.Practice;
import evenwood.journal.PracticeDays;
import evenwood.journal.TakeLine;
import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/** Lines of the journal in words of a language. */
public final class JournalText {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

    private static final int LABEL_CHARACTERS = 12;

    private final Sentences sentences;

    public JournalText(Sentences sentences) {
        this.sentences = sentences;
    }

    /** One line a take: number, time, instrument, what was found, where, note, tags. */
    public String line(TakeLine take) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%5d  %s  %-22s  %s", take.id(), WHEN.format(take.keptAt()),
            take.rigName().isEmpty() ? take.instrument().isEmpty() ? "–" : take.instrument() : take.rigName(), faults(take.faults())));
        append(line, "@ ", take.venue());
        append(line, "“", take.note().isEmpty() ? "" : take.note().lines().findFirst().orElse("") + "”");
        take.tags().forEach(tag -> append(line, "#", tag));
        append(line, "", take.hasAudio() ? sentences.say("journal.with-sound") : "");
        return line.toString();
    }

    private static void append(StringBuilder line, String before, String words) {
        if (!words.isEmpty()) {
            line.append("  ").append(before).append(words);
        }
    }

    /** "hum!!! boomy!!", marks as in a check; "in order" when nothing was found. */
    private String faults(List<String> faults) {
        return faults.isEmpty() ? sentences.say("journal.in-order") : String.join(" ", faults.stream().map(this::fault).toList());
    }

    /** @param fault as a take's line has it, "hum:strong" */
    private String fault(String fault) {
        String[] parts = fault.split(":");
        return sentences.say("fault." + parts[0]) + switch (parts[1]) {
            case "strong" -> "!!!";
            case "clear" -> "!!";
            default -> "!";
        };
    }

    /** What was said about a take, before its result. */
    public List<String> head(KeptTake take, List<Event> events) {
        TakeLine line = take.line();
        List<String> lines = new ArrayList<>();
        lines.add(sentences.say("journal.head", String.valueOf(line.id())) + ", " + WHEN.format(line.keptAt()) + (line.venue().isEmpty() ? "" : ", " + line.venue()));
        if (!line.instrument().isEmpty()) {
            lines.add(label("instrument") + line.instrument() + (line.rigName().isEmpty() ? "" : " (" + line.rigName() + ")"));
        }
        take.rig().ifPresent(rig -> lines.add(label("controls") + String.join(", ", rig.settings().stream()
            .map(setting -> setting.control().name() + " " + setting.say()).toList())));
        if (!line.note().isEmpty()) {
            lines.add(label("note") + String.join(" / ", line.note().lines().toList()));
        }
        if (!line.tags().isEmpty()) {
            lines.add(label("tags") + String.join(", ", line.tags()));
        }
        events.stream().filter(event -> event.concerns(line) && !event.at().isAfter(line.keptAt()))
            .forEach(event -> lines.add(label("before") + event(event, line.keptAt())));
        lines.add("");
        return lines;
    }

    private String label(String word) {
        return String.format(Locale.ROOT, "%-" + LABEL_CHARACTERS + "s", sentences.say("journal.label-" + word));
    }

    /** As a sheet writes it. */
    public static String now() {
        return WHEN.format(OffsetDateTime.now());
    }

    /** Whose take it is, for the head of a sheet. */
    public static String title(TakeLine take) {
        return take.rigName().isEmpty() ? take.instrument().isEmpty() ? take.name() : take.instrument() : take.rigName();
    }

    /** When and where, and what the journal calls it. */
    public String where(TakeLine take) {
        return WHEN.format(take.keptAt()) + (take.venue().isEmpty() ? "" : ", " + take.venue()) + (take.instrument().isEmpty() ? "" : ", " + take.instrument())
            + "; " + sentences.say("journal.take", String.valueOf(take.id()));
    }

    private String event(Event event, OffsetDateTime now) {
        return sentences.say("journal.days-before", words(event), ChronoUnit.DAYS.between(event.at(), now));
    }

    public String line(Event event) {
        return DAY.format(event.at()) + "  " + words(event);
    }

    private String words(Event event) {
        return (event.instrument().isEmpty() ? kind(event.kind()) : sentences.say("journal.event-on", kind(event.kind()), event.instrument()))
            + (event.note().isEmpty() ? "" : " (" + event.note() + ")");
    }

    String kind(EventKind kind) {
        return sentences.say("journal.event." + kind.id());
    }

    /** One line a sitting; its treble against what the other sittings with that instrument usually have. */
    public String line(Practice practice, List<Practice> all) {
        Practice.Figures heard = practice.figures();
        String line = String.format(Locale.ROOT, "%s  %-22s  ", WHEN.format(practice.at()), practice.instrument().isEmpty() ? "–" : practice.instrument())
            + sentences.say("journal.sitting", heard.playingSeconds() / 60, heard.listenedSeconds() / 60, heard.notes(), sentences.level(heard.softDbfs()),
                sentences.level(heard.usualDbfs()), sentences.level(heard.hardDbfs()), sentences.level(heard.integratedLufs()));
        OptionalDouble treble = PracticeDays.trebleAgainstUsual(practice, all);
        return treble.isEmpty() ? line : line + sentences.say("journal.sitting-treble", treble.getAsDouble());
    }
}
