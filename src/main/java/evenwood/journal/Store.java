package evenwood.journal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteOpenMode;

/**
 * The journal's file: one thread that writes, and one connection to read by.
 *
 * <p>How: SQLite with a write-ahead log, so that readers never wait for the writer and a killed program loses at most what
 * it was just writing (JournalKillTest); {@code synchronous=FULL}, so that what was kept survives a power cut: takes are
 * rare and a kept one is worth the few milliseconds.
 * <p>Thread: any; writes are done one after the other on the writer's thread, reads one after the other on the caller's.
 */
final class Store implements AutoCloseable {
    /** What is done with a connection. */
    interface Work<T> {
        T on(Connection connection) throws SQLException;
    }

    private static final int PATIENCE_MILLIS = 5000;

    private final Path file;
    private final int patienceMillis;
    private final ExecutorService writer = Executors.newSingleThreadExecutor(work -> {
        Thread thread = new Thread(work, "journal");
        thread.setDaemon(true);
        return thread;
    });
    private Connection writing;
    private Connection reading;

    private Store(Path file, int patienceMillis) {
        this.file = file;
        this.patienceMillis = patienceMillis;
    }

    static Store open(Path file) {
        return open(file, PATIENCE_MILLIS);
    }

    /** @param patienceMillis how long to wait for another program that is just writing */
    static Store open(Path file, int patienceMillis) {
        Path absolute = file.toAbsolutePath();
        try {
            Files.createDirectories(absolute.getParent());
        } catch (IOException problem) {
            throw StoreProblems.notWritable(absolute, problem);
        }
        Store store = new Store(absolute, patienceMillis);
        try {
            store.write(connection -> {
                Schema schema = new Schema(absolute, connection);
                schema.version(); // somebody else's file is refused before the log's mode is set in it
                setWriteAheadLog(connection);
                schema.bringUpToDate();
                return null;
            });
        } catch (RuntimeException problem) {
            store.close();
            throw problem;
        }
        return store;
    }

    private static void setWriteAheadLog(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA journal_mode = WAL");
        }
    }

    Path file() {
        return file;
    }

    /** Runs on the writer's thread, after what was given to it before. */
    <T> CompletableFuture<T> later(Work<T> work) {
        CompletableFuture<T> done = new CompletableFuture<>();
        writer.execute(() -> {
            try {
                done.complete(work.on(writing()));
            } catch (SQLException problem) {
                done.completeExceptionally(StoreProblems.of(file, problem));
            } catch (RuntimeException | Error problem) {
                // An error too: whoever waits would wait for ever.
                done.completeExceptionally(problem);
            }
        });
        return done;
    }

    /** The same, waiting for it. */
    <T> T write(Work<T> work) {
        return result(later(work));
    }

    /** One transaction on the writer's thread: all of it or nothing. */
    <T> CompletableFuture<T> transaction(Work<T> work) {
        return later(connection -> {
            try (Statement statement = connection.createStatement()) {
                statement.execute("BEGIN IMMEDIATE");
                try {
                    T result = work.on(connection);
                    statement.execute("COMMIT");
                    return result;
                } catch (SQLException | RuntimeException problem) {
                    rollback(statement);
                    throw problem;
                }
            }
        });
    }

    private static void rollback(Statement statement) {
        try {
            statement.execute("ROLLBACK");
        } catch (SQLException alreadyRolledBack) {
            // SQLite itself rolls back after a full disk or an I/O error; there is nothing left to undo then.
        }
    }

    static <T> T result(CompletableFuture<T> future) {
        try {
            return future.get();
        } catch (ExecutionException problem) {
            throw problem.getCause() instanceof RuntimeException known ? known : new IllegalStateException(problem.getCause());
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            throw new JournalProblem("journal: writing was interrupted; look with evenwood journal list whether it was kept", interrupted);
        }
    }

    synchronized <T> T read(Work<T> work) {
        try {
            if (reading == null) {
                reading = connect();
                try (Statement statement = reading.createStatement()) {
                    statement.execute("PRAGMA query_only = ON");
                }
            }
            return work.on(reading);
        } catch (SQLException problem) {
            throw StoreProblems.of(file, problem);
        }
    }

    private Connection writing() throws SQLException {
        if (writing == null) {
            writing = connect();
        }
        return writing;
    }

    private Connection connect() throws SQLException {
        SQLiteConfig config = new SQLiteConfig();
        config.setOpenMode(SQLiteOpenMode.READWRITE);
        config.setBusyTimeout(patienceMillis);
        config.setSynchronous(SQLiteConfig.SynchronousMode.FULL);
        config.enforceForeignKeys(true);
        return config.createConnection("jdbc:sqlite:" + file);
    }

    /** Waits for what is still being written, then lets go of the file. */
    @Override
    public void close() {
        writer.execute(() -> close(writing));
        writer.shutdown();
        try {
            writer.awaitTermination(1, TimeUnit.MINUTES);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
        synchronized (this) {
            close(reading);
            reading = null;
        }
    }

    private static void close(Connection connection) {
        try {
            if (connection != null) {
                connection.close();
            }
        } catch (SQLException leftBehind) {
            // Everything was committed before; the write-ahead log is read by whoever opens the file next.
        }
    }
}
