package evenwood.report;

import evenwood.journal.Event;
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

/** Lines of the journal in words. */
public final class JournalText {
    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);

    private JournalText() { }

    /** One line a take: number, time, instrument, what was found, where, note, tags. */
    public static String line(TakeLine take) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "%5d  %s  %-22s  %s", take.id(), WHEN.format(take.keptAt()),
            take.rigName().isEmpty() ? take.instrument().isEmpty() ? "–" : take.instrument() : take.rigName(), faults(take.faults())));
        append(line, "@ ", take.venue());
        append(line, "“", take.note().isEmpty() ? "" : take.note().lines().findFirst().orElse("") + "”");
        take.tags().forEach(tag -> append(line, "#", tag));
        append(line, "", take.hasAudio() ? "(with sound)" : "");
        return line.toString();
    }

    private static void append(StringBuilder line, String before, String words) {
        if (!words.isEmpty()) {
            line.append("  ").append(before).append(words);
        }
    }

    /** "hum!!! boomy!!", marks as in a check; "in order" when nothing was found. */
    private static String faults(List<String> faults) {
        return faults.isEmpty() ? "in order" : String.join(" ", faults.stream()
            .map(fault -> fault.replace(":strong", "!!!").replace(":clear", "!!").replace(":slight", "!")).toList());
    }

    /** What was said about a take, before its result. */
    public static List<String> head(KeptTake take, List<Event> events) {
        TakeLine line = take.line();
        List<String> lines = new ArrayList<>();
        lines.add("Take " + line.id() + ", " + WHEN.format(line.keptAt()) + (line.venue().isEmpty() ? "" : ", " + line.venue()));
        if (!line.instrument().isEmpty()) {
            lines.add("Instrument  " + line.instrument() + (line.rigName().isEmpty() ? "" : " (" + line.rigName() + ")"));
        }
        take.rig().ifPresent(rig -> lines.add("Controls    " + String.join(", ", rig.settings().stream()
            .map(setting -> setting.control().name() + " " + setting.say()).toList())));
        if (!line.note().isEmpty()) {
            lines.add("Note        " + String.join(" / ", line.note().lines().toList()));
        }
        if (!line.tags().isEmpty()) {
            lines.add("Tags        " + String.join(", ", line.tags()));
        }
        events.stream().filter(event -> event.concerns(line) && !event.at().isAfter(line.keptAt()))
            .forEach(event -> lines.add("Before      " + event(event, line.keptAt())));
        lines.add("");
        return lines;
    }

    /** Whose take it is, for the head of a sheet. */
    public static String title(TakeLine take) {
        return take.rigName().isEmpty() ? take.instrument().isEmpty() ? take.name() : take.instrument() : take.rigName();
    }

    /** When and where, and what the journal calls it. */
    public static String where(TakeLine take) {
        return WHEN.format(take.keptAt()) + (take.venue().isEmpty() ? "" : ", " + take.venue()) + (take.instrument().isEmpty() ? "" : ", " + take.instrument())
            + "; take " + take.id();
    }

    private static String event(Event event, OffsetDateTime now) {
        return words(event) + ", " + ChronoUnit.DAYS.between(event.at(), now) + " days before";
    }

    public static String line(Event event) {
        return DAY.format(event.at()) + "  " + words(event);
    }

    private static String words(Event event) {
        return event.kind().id().replace('-', ' ') + (event.instrument().isEmpty() ? "" : " on " + event.instrument())
            + (event.note().isEmpty() ? "" : " (" + event.note() + ")");
    }

    /** One line a sitting; its treble against what the other sittings with that instrument usually have. */
    public static String line(Practice practice, List<Practice> all) {
        Practice.Figures heard = practice.figures();
        String line = String.format(Locale.ROOT, "%s  %-22s  %.0f min played of %.0f, %d notes, soft %s usual %s hard %s dBFS, %s LUFS",
            WHEN.format(practice.at()), practice.instrument().isEmpty() ? "–" : practice.instrument(), heard.playingSeconds() / 60,
            heard.listenedSeconds() / 60, heard.notes(), level(heard.softDbfs()), level(heard.usualDbfs()), level(heard.hardDbfs()), level(heard.integratedLufs()));
        OptionalDouble treble = PracticeDays.trebleAgainstUsual(practice, all);
        return treble.isEmpty() ? line : line + ", treble " + (treble.getAsDouble() > 0 ? "+" : "") + level(treble.getAsDouble()) + " dB against the usual";
    }

    static String level(double db) {
        return Double.isFinite(db) ? String.format(Locale.ROOT, "%.1f", db).replace('-', '−') : "–";
    }
}
