package evenwood.journal;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;

/**
 * Every take that was kept, and what happened in between.
 *
 * <p>Open one for as long as it is needed and close it. All methods throw {@link JournalProblem}, whose message is the line
 * for the player.
 * <p>Thread: any; writing is done on the journal's own thread, {@link #keep} and its kin wait for nothing.
 */
public final class Journal implements AutoCloseable {
    private final Store store;

    private Journal(Store store) {
        this.store = store;
    }

    /** Opens the journal, new and empty if there is no such file; an older form is brought up to date. */
    public static Journal open(Path file) {
        return new Journal(Store.open(file));
    }

    static Journal open(Path file, int patienceMillis) {
        return new Journal(Store.open(file, patienceMillis));
    }

    public Path file() {
        return store.file();
    }

    /** Keeps a take on the journal's thread; a take of the same uid is kept once. @return its number */
    public CompletableFuture<Long> keep(TakeToKeep take) {
        return store.transaction(connection -> new TakeTable(connection).insert(take));
    }

    /** The same, waiting until it is safe on the disk. */
    public long keepNow(TakeToKeep take) {
        return Store.result(keep(take));
    }

    /** Newest first. */
    public List<TakeLine> list(TakeFilter filter) {
        return store.read(connection -> new TakeTable(connection).list(filter));
    }

    /** How many takes there are. */
    public int size() {
        return store.read(connection -> new TakeTable(connection).count());
    }

    /** @throws JournalProblem when there is no such take */
    public KeptTake take(long id) {
        return store.read(connection -> new TakeTable(connection).take(id))
            .orElseThrow(() -> new JournalProblem("journal: there is no take " + id + "; see evenwood journal list").of(JournalTrouble.NO_TAKE, id));
    }

    /** The same with its sound, as it can be kept in another journal. */
    public TakeToKeep takeToKeep(long id) {
        KeptTake take = take(id);
        TakeLine line = take.line();
        return new TakeToKeep(line.uid(), line.keptAt(), take.assessment(), take.rig(),
            new TakeWords(line.instrument(), line.venue(), line.note(), line.tags()), flac(id));
    }

    /** The sound of a take, if it was kept. */
    public Optional<byte[]> flac(long id) {
        return store.read(connection -> new TakeTable(connection).flac(id));
    }

    /** Changes what the player says about a take. */
    public void say(long id, TakeWords words) {
        boolean there = Store.result(store.transaction(connection -> new TakeTable(connection).say(id, words)));
        if (!there) {
            throw new JournalProblem("journal: there is no take " + id + "; see evenwood journal list").of(JournalTrouble.NO_TAKE, id);
        }
    }

    public CompletableFuture<Void> add(Event event) {
        return store.transaction(connection -> {
            new EventTable(connection).insert(event);
            return null;
        });
    }

    public void addNow(Event event) {
        Store.result(add(event));
    }

    /** Oldest first. */
    public List<Event> events() {
        return store.read(connection -> new EventTable(connection).all());
    }

    public CompletableFuture<Void> add(Practice practice) {
        return store.transaction(connection -> {
            new PracticeTable(connection).insert(practice);
            return null;
        });
    }

    public void addNow(Practice practice) {
        Store.result(add(practice));
    }

    /** Oldest first. */
    public List<Practice> practice() {
        return store.read(connection -> new PracticeTable(connection).all());
    }

    /** One reading of the takes that pass the filter and have it, oldest first. */
    public List<ReadingPoint> points(String readingName, TakeFilter filter) {
        return store.read(connection -> new TakeTable(connection).points(readingName, filter));
    }

    /** A reading over time with events and what the numbers support; see {@link Reading#named}. */
    public Trend trend(Reading reading, TakeFilter filter) {
        return Trend.of(reading, points(reading.name(), filter), eventsFor(filter));
    }

    /** What the takes say about strings, battery and channel; best asked of one instrument. */
    public List<Suspicion> suspicions(TakeFilter filter) {
        List<Event> events = eventsFor(filter);
        Suspicion.Points points = name -> points(name, filter);
        return Stream.of(Suspicion.strings(points, events), Suspicion.battery(points, events), Suspicion.noise(points, events))
            .flatMap(Optional::stream).toList();
    }

    /** Two takes side by side; how much readings usually scatter is learned from the other takes of the second one's instrument. */
    public TakeComparison compare(long before, long after) {
        KeptTake second = take(after);
        TakeFilter same = second.line().instrument().isEmpty() ? TakeFilter.ALL : TakeFilter.ALL.ofInstrument(second.line().instrument());
        return TakeComparison.of(take(before), second, reading -> points(reading.name(), same).stream()
            .filter(point -> point.takeId() != before && point.takeId() != after).toList());
    }

    /** Instruments there are takes of, most takes first; takes of which nobody said what was played are left out. */
    public List<String> instruments() {
        return store.read(connection -> new TakeTable(connection).instruments());
    }

    private List<Event> eventsFor(TakeFilter filter) {
        return filter.instrument().map(name -> events().stream().filter(event -> event.instrument().isEmpty()
            || event.instrument().equalsIgnoreCase(name)).toList()).orElseGet(this::events);
    }

    Store store() {
        return store;
    }

    @Override
    public void close() {
        store.close();
    }
}
