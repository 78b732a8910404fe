package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BackupTest {
    private static final int PAGE_BYTES = 4096;

    @TempDir
    Path folder;

    @Test
    void aBackupIsMadeInUseAndGoneBackTo() {
        Path copy = folder.resolve("backups/first.db");
        try (Journal journal = journal(2)) {
            Backup.write(journal, copy);
            keep(journal);
            assertThat(journal.list(TakeFilter.ALL)).hasSize(3);
            assertThatThrownBy(() -> Backup.write(journal, copy)).hasMessage("journal backup: " + copy + " exists already and was left as it is; choose another name");
        }
        Optional<Path> aside = Backup.restore(copy, folder.resolve("journal.db"));
        assertThat(size(folder.resolve("journal.db"))).isEqualTo(2);
        assertThat(size(aside.orElseThrow())).as("what was there before").isEqualTo(3);
    }

    @Test
    void aBackupCanBeBroughtToAPlaceWithoutAJournal() {
        Path copy = folder.resolve("copy.db");
        try (Journal journal = journal(1)) {
            Backup.write(journal, copy);
        }
        assertThat(Backup.restore(copy, folder.resolve("new/journal.db"))).isEmpty();
        assertThat(size(folder.resolve("new/journal.db"))).isEqualTo(1);
    }

    @Test
    void aBadBackupLeavesTheJournalAsItWas() throws IOException {
        journal(2).close();
        Path text = Files.writeString(folder.resolve("text"), "no backup at all, only words. ".repeat(50));
        assertThatThrownBy(() -> Backup.restore(text, folder.resolve("journal.db"))).isInstanceOf(JournalProblem.class)
            .hasMessageStartingWith("journal: " + text + " is damaged or no journal");
        assertThatThrownBy(() -> Backup.restore(folder.resolve("none"), folder.resolve("journal.db")))
            .hasMessage("journal restore: " + folder.resolve("none") + " does not exist; check the spelling");
        assertThat(size(folder.resolve("journal.db"))).isEqualTo(2);
        try (var files = Files.list(folder)) {
            assertThat(files.map(file -> file.getFileName().toString())).doesNotContain("journal.db.restoring");
        }
    }

    @Test
    void whatADamagedJournalStillHasIsSaved() throws IOException {
        int takes = 30;
        journal(takes).close();
        Path file = folder.resolve("journal.db");
        long pages = Files.size(file) / PAGE_BYTES;
        int least = takes;
        for (long page = pages / 3; page < pages; page += pages / 6) {
            Path hurt = Files.copy(file, folder.resolve("hurt" + page));
            try (RandomAccessFile bytes = new RandomAccessFile(hurt.toFile(), "rw")) {
                bytes.seek(page * PAGE_BYTES);
                bytes.write(new byte[PAGE_BYTES]);
            }
            int saved = Backup.salvage(hurt, folder.resolve("saved" + page));
            assertThat(size(folder.resolve("saved" + page))).isEqualTo(saved);
            least = Math.min(least, saved);
        }
        assertThat(least).as("one damaged page costs few takes").isGreaterThan(takes / 2);
    }

    private Journal journal(int takes) {
        Journal journal = Journal.open(folder.resolve("journal.db"));
        for (int i = 0; i < takes; i++) {
            keep(journal);
        }
        return journal;
    }

    private static void keep(Journal journal) {
        journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING, TakeWords.NONE));
    }

    private static int size(Path file) {
        try (Journal journal = Journal.open(file)) {
            return journal.list(TakeFilter.ALL).size();
        }
    }
}
