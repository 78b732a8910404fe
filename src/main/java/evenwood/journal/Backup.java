package evenwood.journal;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import org.sqlite.SQLiteConfig;

/**
 * Copies of the journal: made while it is in use, and gone back to.
 *
 * <p>How: {@code VACUUM INTO} writes one consistent, compact file whatever is being written meanwhile (SQLite documentation,
 * VACUUM). Going back never destroys: what was there before is laid aside under a name with the date.
 */
public final class Backup {
    private static final DateTimeFormatter STAMP = DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmmss");

    private Backup() { }

    /** @throws JournalProblem also when there is such a file already */
    public static void write(Journal journal, Path copy) {
        if (Files.exists(copy)) {
            throw new JournalProblem("journal backup: " + copy + " exists already and was left as it is; choose another name");
        }
        makeFolder(copy);
        try {
            journal.store().read(connection -> vacuumInto(connection, copy));
        } catch (JournalProblem problem) {
            remove(copy); // half a copy looks like a whole one
            if (problem.getMessage().contains(" is damaged")) {
                throw problem;
            }
            throw new JournalProblem("journal backup: " + copy + " cannot be written (" + reason(problem) + "); choose another folder or disk", problem);
        }
    }

    private static String reason(Exception problem) {
        return problem.getCause() == null ? String.valueOf(problem.getMessage()) : String.valueOf(problem.getCause().getMessage()).lines().findFirst().orElse("");
    }

    private static Void vacuumInto(Connection connection, Path copy) throws SQLException {
        try (Statement statement = connection.createStatement(); PreparedStatement copying = connection.prepareStatement("VACUUM INTO ?")) {
            statement.execute("PRAGMA query_only = OFF");
            copying.setString(1, copy.toAbsolutePath().toString());
            copying.execute();
            statement.execute("PRAGMA query_only = ON");
        }
        return null;
    }

    /**
     * Puts a backup in the journal's place.
     *
     * @return where what was there before was laid aside, if there was anything
     */
    public static Optional<Path> restore(Path backup, Path journal) {
        if (!Files.isRegularFile(backup)) {
            throw new JournalProblem("journal restore: " + backup + " does not exist; check the spelling");
        }
        Path fresh = journal.resolveSibling(journal.getFileName() + ".restoring");
        try {
            makeFolder(journal);
            Files.copy(backup, fresh, StandardCopyOption.REPLACE_EXISTING);
            checkWhole(fresh, backup);
            Optional<Path> aside = layAside(journal);
            Files.move(fresh, journal, StandardCopyOption.ATOMIC_MOVE);
            return aside;
        } catch (IOException problem) {
            throw new JournalProblem("journal restore: " + journal + " cannot be written (" + problem.getMessage() + "); the journal is as it was", problem);
        } finally {
            remove(fresh);
        }
    }

    private static void checkWhole(Path copy, Path backup) {
        try (Store store = Store.open(copy)) {
            List<String> answer = store.read(connection -> TakeTable.rows(connection, "PRAGMA integrity_check", row -> row.getString(1)));
            if (!answer.equals(List.of("ok"))) {
                throw new JournalProblem("journal restore: " + backup + " is damaged (" + answer.get(0).lines().findFirst().orElse("") + "); the journal is as it was");
            }
        } catch (JournalProblem problem) {
            throw new JournalProblem(problem.getMessage().replace(copy.toAbsolutePath().toString(), backup.toString()), problem);
        }
    }

    /** With everything that was only in the log; a damaged one goes as it is. */
    private static Optional<Path> layAside(Path journal) throws IOException {
        if (!Files.exists(journal)) {
            return Optional.empty();
        }
        try (Connection connection = new SQLiteConfig().createConnection("jdbc:sqlite:" + journal.toAbsolutePath()); Statement statement = connection.createStatement()) {
            statement.execute("PRAGMA locking_mode = EXCLUSIVE");
            statement.execute("BEGIN EXCLUSIVE");
            statement.execute("COMMIT");
        } catch (SQLException problem) {
            JournalProblem told = StoreProblems.of(journal, problem);
            if (told.getMessage().contains("in use")) {
                throw told;
            }
        }
        Path aside = journal.resolveSibling(journal.getFileName() + ".before-restore-" + LocalDateTime.now().format(STAMP));
        for (String part : List.of("-wal", "-shm", "")) {
            Path from = journal.resolveSibling(journal.getFileName() + part);
            if (Files.exists(from)) {
                Files.move(from, aside.resolveSibling(aside.getFileName() + part));
            }
        }
        return Optional.of(aside);
    }

    /**
     * Copies out of a damaged journal what can still be read, take by take.
     *
     * @return how many takes were saved
     */
    public static int salvage(Path damaged, Path copy) {
        if (Files.exists(copy)) {
            throw new JournalProblem("journal backup: " + copy + " exists already and was left as it is; choose another name");
        }
        try (Salvage salvage = new Salvage(damaged); Journal journal = Journal.open(copy)) {
            return salvage.into(journal);
        }
    }

    private static void makeFolder(Path file) {
        try {
            Files.createDirectories(file.toAbsolutePath().getParent());
        } catch (FileAlreadyExistsException problem) {
            throw StoreProblems.notWritable(file, problem);
        } catch (IOException problem) {
            throw StoreProblems.notWritable(file, problem);
        }
    }

    private static void remove(Path unfinished) {
        for (String part : List.of("", "-wal", "-shm")) {
            try {
                Files.deleteIfExists(unfinished.resolveSibling(unfinished.getFileName() + part));
            } catch (IOException leftBehind) {
                // A file more in the folder harms nobody.
            }
        }
    }
}
