package evenwood.journal;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.sqlite.SQLiteConfig;

/**
 * Reads a damaged journal entry by entry and passes over what cannot be read; the file itself is only read.
 *
 * <p>How: numbers are tried one by one, so that a damaged page costs the entries on it and no others.
 */
final class Salvage implements AutoCloseable {
    private static final int MOST_GAPS = 100_000;

    private final Path file;
    private final Connection connection;

    Salvage(Path file) {
        this.file = file;
        if (!Files.isRegularFile(file)) {
            throw new JournalProblem("journal backup: " + file + " does not exist; name it with --journal FILE");
        }
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        try {
            connection = config.createConnection("jdbc:sqlite:" + file.toAbsolutePath());
        } catch (SQLException problem) {
            throw StoreProblems.of(file, problem);
        }
    }

    int into(Journal journal) {
        int saved = 0;
        long highest = attempt(() -> TakeTable.rows(connection, "SELECT seq FROM sqlite_sequence WHERE name = 'take'", row -> row.getLong(1)).get(0)).orElse(0L);
        long last = highest > 0 ? highest : MOST_GAPS;
        for (long id = 1; id <= last; id++) {
            Optional<TakeToKeep> take = read(id);
            if (take.isPresent()) {
                journal.keepNow(take.get());
                saved++;
            }
        }
        attempt(() -> new EventTable(connection).all()).ifPresent(events -> events.forEach(journal::addNow));
        attempt(() -> new PracticeTable(connection).all()).ifPresent(all -> all.forEach(journal::addNow));
        if (saved == 0 && highest != 0) {
            throw new JournalProblem("journal backup: nothing in " + file + " could be read; a backup is all that helps: evenwood journal restore FILE");
        }
        return saved;
    }

    private Optional<TakeToKeep> read(long id) {
        TakeTable table = new TakeTable(connection);
        return attempt(() -> table.take(id)).flatMap(found -> found).map(take -> {
            TakeLine line = take.line();
            Optional<byte[]> sound = attempt(() -> table.flac(id)).flatMap(found -> found);
            return new TakeToKeep(line.uid(), line.keptAt(), take.assessment(), take.rig(),
                new TakeWords(line.instrument(), line.venue(), line.note(), line.tags()), sound);
        });
    }

    private static <T> Optional<T> attempt(Callable<T> reading) {
        try {
            return Optional.ofNullable(reading.call());
        } catch (Exception damaged) {
            return Optional.empty();
        }
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException nothingToDo) {
            // It was only read.
        }
    }
}
