package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.journal.Journal;
import evenwood.journal.JournalExport;
import evenwood.journal.KeptExamples;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeWords;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class JournalSavingTest {
    private static final int TAKES = 60;
    private static final Words ENGLISH = Words.in(Locale.ENGLISH);
    @TempDir
    Path folder;
    private JournalSaving saving;

    @BeforeEach
    void someTakes() {
        Path file = folder.resolve("journal.db");
        try (Journal journal = Journal.open(file)) {
            for (int i = 0; i < TAKES; i++) {
                journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING.plusDays(i), new TakeWords("oud", "", "take " + i, List.of())));
            }
        }
        saving = new JournalSaving(file);
    }

    @Test
    void everythingThatIsSavedComesBack() {
        Path to = folder.resolve("all.json");
        saving.write(to, false, ENGLISH);
        settle();

        assertThat(saving.written().answer().value()).contains(to);
        assertThat(saving.part()).isGreaterThan(0.9);
        try (Journal other = Journal.open(folder.resolve("other.db"))) {
            assertThat(JournalExport.read(to, other)).isEqualTo(TAKES);
            assertThat(other.list(TakeFilter.ALL)).hasSize(TAKES);
        }
    }

    @Test
    void theTableHasALineForEachTake() throws Exception {
        Path to = folder.resolve("all.CSV");
        saving.write(to, false, ENGLISH);
        settle();

        assertThat(Files.readAllLines(to)).hasSize(TAKES + 1);
    }

    @Test
    void brokenOffItLeavesNoFileAndAnOlderOneAsItWas() throws Exception {
        Path to = Files.writeString(folder.resolve("all.json"), "older");
        saving.write(to, false, ENGLISH);
        saving.cancel();
        while (hasUnfinished()) {
            LockSupport.parkNanos(2_000_000);
        }
        // What is asked next is done after what was broken off.
        saving.write(folder.resolve("next.csv"), false, ENGLISH);
        settle();

        assertThat(Files.readString(to)).isEqualTo("older");
        assertThat(hasUnfinished()).isFalse();
    }

    private boolean hasUnfinished() throws Exception {
        try (var files = Files.list(folder)) {
            return files.anyMatch(file -> file.toString().endsWith(".unfinished"));
        }
    }

    private void settle() {
        while (saving.written().isWaiting()) {
            LockSupport.parkNanos(2_000_000);
        }
    }
}
