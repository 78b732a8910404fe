package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.Practice;
import evenwood.journal.Reading;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeLine;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.journal.Trend;
import evenwood.rig.Rig;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * The journal as the window shows it: the takes that match, two of them compared, one reading over time. All questions are
 * answered beside the screen; a journal that does not exist yet is an empty one and is made when the first take is kept.
 *
 * <p>Thread: the screen's; answers may be read by any.
 */
public final class JournalModel {
    /** What may be followed over time, by name. */
    public static final List<String> READINGS = List.of(Reading.TREBLE, "lowDb", "midDb", Reading.HIGH_DB, Reading.OUTPUT, "usualDbfs", "integratedLufs",
        "truePeakDbtp", "signalToNoiseDb", Reading.HISS, "humDbfs", "buzzDbfs");

    /**
     * @param takes       those that match, newest first
     * @param instruments there are takes of
     * @param all         how many takes there are on the whole
     */
    public record Found(List<TakeLine> takes, List<String> instruments, int all) { }

    /** @param suspicions what the takes say about strings, battery and channel */
    public record OverTime(Trend trend, List<Suspicion> suspicions) { }

    /** How far back the list goes, in days; 0 for everything. */
    public static final List<Integer> PERIODS_DAYS = List.of(0, 7, 30, 365);

    private final Path file;
    private final ChosenTake chosen;
    private final JournalSaving saving;
    private final Later<List<Practice>> practised = new Later<>("evenwood-journal-practice");
    private final Later<Found> found = new Later<>("evenwood-journal-list");
    private final Later<TakeComparison> compared = new Later<>("evenwood-journal-compare");
    private final Later<OverTime> overTime = new Later<>("evenwood-journal-trend");
    private final Later<Long> kept = new Later<>("evenwood-journal-keep");
    private final List<Long> picked = new ArrayList<>();
    private String search = "";
    private String section = "list";
    private int periodDays;
    private String instrument = "";
    private String reading = Reading.TREBLE;

    public JournalModel(Path file) {
        this.file = file;
        chosen = new ChosenTake(file, this::look);
        saving = new JournalSaving(file);
    }

    public Path file() {
        return file;
    }

    /** The one take that is looked at. */
    public ChosenTake chosen() {
        return chosen;
    }

    public JournalSaving saving() {
        return saving;
    }

    /** What live playing was written down, oldest first. */
    public Later<List<Practice>> practised() {
        return practised;
    }

    /** Which part of the page is open, by its name. */
    public String section() {
        return section;
    }

    public void section(String name) {
        section = name;
    }

    /** Asks for everything anew. */
    public void look() {
        find();
        follow();
        practised.ask(() -> {
            if (!Files.exists(file)) {
                return List.of();
            }
            try (Journal journal = Journal.open(file)) {
                return journal.practice();
            }
        });
    }

    public void search(String words) {
        search = words;
        find();
    }

    /** Only this instrument; empty for all. */
    public void instrument(String name) {
        instrument = name;
        look();
    }

    /** Only takes of the last so many days; 0 for all. */
    public void period(int days) {
        periodDays = days;
        find();
    }

    public int period() {
        return periodDays;
    }

    public void reading(String name) {
        reading = name;
        follow();
    }

    public String search() {
        return search;
    }

    public String instrument() {
        return instrument;
    }

    public String reading() {
        return reading;
    }

    /** Picks a take to compare, or lets go of it; of three the first is let go. The older one is compared with. */
    public void pick(long id) {
        if (!picked.remove(id)) {
            picked.add(id);
        }
        if (picked.size() > 2) {
            picked.remove(0);
        }
        if (picked.size() == 2) {
            long before = Math.min(picked.get(0), picked.get(1));
            long after = Math.max(picked.get(0), picked.get(1));
            compared.ask(() -> {
                try (Journal journal = Journal.open(file)) {
                    return inOrder(journal, before, after);
                }
            });
        } else {
            compared.drop();
        }
    }

    private static TakeComparison inOrder(Journal journal, long one, long other) {
        boolean turned = journal.take(one).line().keptAt().isAfter(journal.take(other).line().keptAt());
        return turned ? journal.compare(other, one) : journal.compare(one, other);
    }

    /** One or two takes, in the order they were picked. */
    public List<Long> picked() {
        return List.copyOf(picked);
    }

    public Later<Found> found() {
        return found;
    }

    public Later<TakeComparison> compared() {
        return compared;
    }

    public Later<OverTime> overTime() {
        return overTime;
    }

    /** The number of the take kept last. */
    public Later<Long> kept() {
        return kept;
    }

    /** Keeps a take as it was assessed, with the rig as it stands. */
    public void keep(Assessment assessment, Optional<Rig> rig) {
        TakeToKeep take = new TakeToKeep(OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS), assessment, rig,
            new TakeWords(rig.map(each -> each.instrument().id()).orElse(""), "", "", List.of()));
        kept.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                return journal.keepNow(take);
            }
        });
    }

    /** Something happened to the instrument that is shown, or to all: today means now, an earlier day its beginning, before what was played on it. */
    public void happened(EventKind kind, LocalDate day, String note) {
        OffsetDateTime at = day.equals(LocalDate.now()) ? OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS)
            : day.atStartOfDay(ZoneId.systemDefault()).toOffsetDateTime();
        Event event = new Event(UUID.randomUUID().toString(), at, kind, instrument, note.strip());
        TakeFilter filter = filter();
        overTime.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                journal.addNow(event);
                return overTime(journal, Reading.named(reading).orElseThrow(), filter);
            }
        });
    }

    private void find() {
        TakeFilter all = TakeFilter.search(search);
        TakeFilter ofOne = instrument.isEmpty() ? all : all.ofInstrument(instrument);
        TakeFilter filter = periodDays == 0 ? ofOne : ofOne.between(Optional.of(Instant.now().minus(periodDays, ChronoUnit.DAYS)), Optional.empty());
        found.ask(() -> {
            if (!Files.exists(file)) {
                return new Found(List.of(), List.of(), 0);
            }
            try (Journal journal = Journal.open(file)) {
                List<TakeLine> takes = journal.list(filter);
                return new Found(takes, journal.instruments(), journal.size());
            }
        });
    }

    private void follow() {
        String name = reading;
        TakeFilter filter = filter();
        overTime.ask(() -> {
            Reading followed = Reading.named(name).orElseThrow();
            if (!Files.exists(file)) {
                return new OverTime(new Trend(followed, List.of(), List.of(), List.of()), List.of());
            }
            try (Journal journal = Journal.open(file)) {
                return overTime(journal, followed, filter);
            }
        });
    }

    private static OverTime overTime(Journal journal, Reading followed, TakeFilter filter) {
        return new OverTime(journal.trend(followed, filter), journal.suspicions(filter));
    }

    private TakeFilter filter() {
        return instrument.isEmpty() ? TakeFilter.ALL : TakeFilter.ALL.ofInstrument(instrument);
    }
}
