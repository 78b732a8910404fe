package evenwood.ui.model;

import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.Reading;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeFilter;
import evenwood.journal.Trend;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * One reading of the kept takes over time, and what happened in between.
 *
 * <p>Thread: the screen's; answers may be read by any.
 */
public final class TrendModel {
    /** What may be followed over time, by name. */
    public static final List<String> READINGS = List.of(Reading.TREBLE, "lowDb", "midDb", Reading.HIGH_DB, Reading.OUTPUT, "usualDbfs", "integratedLufs",
        "truePeakDbtp", "signalToNoiseDb", Reading.HISS, "humDbfs", "buzzDbfs");

    /** @param suspicions what the takes say about strings, battery and channel */
    public record OverTime(Trend trend, List<Suspicion> suspicions) { }

    private final Path file;
    private final Supplier<String> instrument;
    private final Later<OverTime> overTime = new Later<>("evenwood-journal-trend");
    private volatile String reading = Reading.TREBLE;

    /** @param instrument that is shown; empty for all */
    TrendModel(Path file, Supplier<String> instrument) {
        this.file = file;
        this.instrument = instrument;
    }

    public Later<OverTime> overTime() {
        return overTime;
    }

    public String reading() {
        return reading;
    }

    public void reading(String name) {
        reading = name;
        look();
    }

    /** Something happened to the instrument that is shown, or to all: today means now, an earlier day its beginning, before what was played on it. */
    public void happened(EventKind kind, LocalDate day, String note) {
        OffsetDateTime at = day.equals(LocalDate.now()) ? OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS)
            : day.atStartOfDay(ZoneId.systemDefault()).toOffsetDateTime();
        Event event = new Event(UUID.randomUUID().toString(), at, kind, instrument.get(), note.strip());
        TakeFilter filter = filter();
        overTime.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                journal.addNow(event);
                return overTime(journal, Reading.named(reading).orElseThrow(), filter);
            }
        });
    }

    /** Asks anew. */
    void look() {
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
        return instrument.get().isEmpty() ? TakeFilter.ALL : TakeFilter.ALL.ofInstrument(instrument.get());
    }
}
