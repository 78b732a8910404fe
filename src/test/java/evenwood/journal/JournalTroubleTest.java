package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;

import evenwood.Needs;
import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is wrong with the file: one clear line, and nothing that was kept is lost. */
class JournalTroubleTest {
    @TempDir
    Path folder;
    private Path file;

    @BeforeEach
    void oneTakeIsKept() {
        file = folder.resolve("journal.db");
        try (Journal journal = Journal.open(file)) {
            keep(journal);
        }
    }

    @Test
    void aFullDiskLosesOnlyTheTakeThatDidNotFit() {
        try (Journal journal = Journal.open(file)) {
            // As SQLite itself reports a full disk, without filling one: no page more than there are.
            journal.store().write(connection -> run(connection, "PRAGMA max_page_count = 1"));
            assertThatThrownBy(() -> keepMany(journal)).isInstanceOf(JournalProblem.class).hasMessage("journal: the disk under " + file
                + " is full; what was kept before is untouched; free some space, or name a file on another disk with --journal FILE");
            int kept = journal.list(TakeFilter.ALL).size();
            assertThat(kept).isBetween(1, 100);
            readEverything(file);
            journal.store().write(connection -> run(connection, "PRAGMA max_page_count = 100000"));
            keep(journal);
            assertThat(journal.list(TakeFilter.ALL)).as("it goes on once there is room").hasSize(kept + 1);
        }
    }

    @Test
    void aFileThatAnotherProgramHoldsIsWaitedForAndThenTold() throws SQLException {
        try (Journal journal = Journal.open(file, 50); Connection other = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            run(other, "BEGIN IMMEDIATE");
            assertThatThrownBy(() -> keep(journal)).hasMessage("journal: " + file + " is in use by another program just now;"
                + " what was kept before is untouched; close the other one and try again");
            assertThat(journal.list(TakeFilter.ALL)).as("reading goes on").hasSize(1);
            run(other, "ROLLBACK");
            keep(journal);
            assertThat(journal.list(TakeFilter.ALL)).hasSize(2);
        }
    }

    @Test
    void aFolderWhereNothingCanBeWrittenIsTold() throws IOException {
        Path closed = closedFolder();
        assertThatThrownBy(() -> Journal.open(closed.resolve("journal.db"))).hasMessage(notWritable(closed.resolve("journal.db")));
    }

    @Test
    void aFolderThatCannotBeMadeIsTold() throws IOException {
        Path notAFolder = Files.writeString(folder.resolve("file"), "x");
        assertThatThrownBy(() -> Journal.open(notAFolder.resolve("journal.db"))).hasMessage(notWritable(notAFolder.resolve("journal.db")));
        assertThatThrownBy(() -> Journal.open(folder)).isInstanceOf(JournalProblem.class).hasMessage(notWritable(folder));
    }

    @Test
    void aNewerProgramsJournalIsLeftAlone() throws Exception {
        change("PRAGMA user_version = 99");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Journal.open(file)).hasMessage("journal: " + file + " was written by a newer evenwood (its form is number 99, this one knows up to "
            + Schema.NEWEST + "); nothing was changed in it; use the newer evenwood, or name another file with --journal FILE");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void anotherProgramsDatabaseIsLeftAlone() throws Exception {
        file = folder.resolve("other.db");
        change("CREATE TABLE songs (name TEXT)");
        byte[] before = Files.readAllBytes(file);
        assertThatThrownBy(() -> Journal.open(file)).hasMessage("journal: " + file
            + " is the database of another program; nothing was changed in it; name another file with --journal FILE");
        assertThat(Files.readAllBytes(file)).isEqualTo(before);
    }

    @Test
    void aFileThatIsNoDatabaseIsLeftAlone() throws IOException {
        Path text = Files.writeString(folder.resolve("text.db"), "Dear journal, today I played. ".repeat(100));
        assertThatThrownBy(() -> Journal.open(text)).hasMessageStartingWith("journal: " + text + " is damaged or no journal (")
            .hasMessageContaining("nothing was changed in it; copy what can still be read with evenwood journal backup FILE --salvage");
        assertThat(Files.readString(text)).startsWith("Dear journal");
    }

    @Test
    void aDamagedFileIsToldAndWhatCanBeReadIsSaved() throws IOException {
        try (Journal journal = Journal.open(file)) {
            for (int i = 0; i < 30; i++) {
                keep(journal);
            }
        }
        long pages = Files.size(file) / 4096;
        int told = 0;
        for (long page = 2; page < pages; page += Math.max(1, pages / 25)) {
            Path hurt = Files.copy(file, folder.resolve("hurt" + page + ".db"));
            try (RandomAccessFile bytes = new RandomAccessFile(hurt.toFile(), "rw")) {
                bytes.seek(page * 4096);
                bytes.write("damage".repeat(600).getBytes());
            }
            byte[] before = Files.readAllBytes(hurt);
            Throwable problem = catchThrowable(() -> readEverything(hurt));
            told += problem == null ? 0 : 1;
            assertThat(problem == null || problem instanceof JournalProblem).as("page %d: %s", page, problem).isTrue();
            assertThat(Files.readAllBytes(hurt)).as("page %d", page).isEqualTo(before);
        }
        assertThat(told).as("damage is noticed").isGreaterThan(5);
    }

    private static void readEverything(Path hurt) {
        try (Journal journal = Journal.open(hurt)) {
            List<TakeLine> lines = journal.list(TakeFilter.ALL);
            lines.forEach(line -> journal.take(line.id()));
            journal.points("truePeakDbtp", TakeFilter.ALL);
        }
    }

    /** Rights do not hold for root, but the kernel lets nobody make files in its own folders. */
    private Path closedFolder() throws IOException {
        if ("root".equals(System.getProperty("user.name"))) {
            Needs.file("/sys/kernel");
            return Path.of("/sys/kernel");
        }
        Path closed = Files.createDirectory(folder.resolve("closed"));
        return Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("r-xr-xr-x"));
    }

    private static String notWritable(Path path) {
        return "journal: " + path + " cannot be opened for writing; what was kept before is untouched;"
            + " check the rights of the file and its folder, or name another file with --journal FILE";
    }

    private void change(String command) throws SQLException {
        try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            run(connection, command);
        }
    }

    private static Void run(Connection connection, String command) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(command);
        }
        return null;
    }

    private static void keepMany(Journal journal) {
        for (int i = 0; i < 100; i++) {
            keep(journal);
        }
    }

    private static void keep(Journal journal) {
        journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING, TakeWords.NONE));
    }
}
