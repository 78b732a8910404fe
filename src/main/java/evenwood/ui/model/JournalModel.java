package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.journal.Journal;
import evenwood.journal.Practice;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeLine;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.rig.Rig;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The journal as the window shows it: the takes that match, two of them compared, readings over time. All questions are
 * answered beside the screen; a journal that does not exist yet is an empty one and is made when the first take is kept.
 *
 * <p>Thread: the screen's; answers may be read by any.
 */
public final class JournalModel {
    /**
     * @param takes       those that match, newest first
     * @param instruments there are takes of
     * @param all         how many takes there are on the whole
     */
    public record Found(List<TakeLine> takes, List<String> instruments, int all) { }

    /** How far back the list goes, in days; 0 for everything. */
    public static final List<Integer> PERIODS_DAYS = List.of(0, 7, 30, 365);

    private final Path file;
    private final ChosenTake chosen;
    private final JournalSaving saving;
    private final TrendModel trend;
    private final Later<List<Practice>> practised = new Later<>("evenwood-journal-practice");
    private final Later<Found> found = new Later<>("evenwood-journal-list");
    private final Later<TakeComparison> compared = new Later<>("evenwood-journal-compare");
    private final Later<Long> kept = new Later<>("evenwood-journal-keep");
    private final List<Long> picked = new ArrayList<>();
    private volatile String search = "";
    private String section = "list";
    private volatile int periodDays;
    private volatile String instrument = "";

    public JournalModel(Path file) {
        this.file = file;
        chosen = new ChosenTake(file, this::look);
        saving = new JournalSaving(file);
        trend = new TrendModel(file, this::instrument);
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

    /** A reading over time, of the instrument that is shown. */
    public TrendModel trend() {
        return trend;
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

    /** Asks for everything anew. Thread: any. */
    public void look() {
        find();
        trend.look();
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

    public String search() {
        return search;
    }

    public String instrument() {
        return instrument;
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
            } finally {
                look();
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
}
