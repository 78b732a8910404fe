package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTest {
    @TempDir
    Path folder;

    @Test
    void aTakeIsKeptWithAllThatBelongsToIt() {
        TakeToKeep take = KeptExamples.measured();
        try (Journal journal = Journal.open(folder.resolve("deep/er/journal.db"))) {
            assertThat(journal.keepNow(take)).isEqualTo(1);
        }
        try (Journal journal = Journal.open(folder.resolve("deep/er/journal.db"))) {
            KeptTake kept = journal.take(1);
            assertThat(StoredForm.json(kept.assessment())).isEqualTo(StoredForm.json(take.assessment()));
            assertThat(kept.rig()).isEqualTo(take.rig());
            TakeLine line = kept.line();
            assertThat(line.keptAt()).isEqualTo(KeptExamples.EVENING);
            assertThat(line.venue()).isEqualTo("The Harp & Crown");
            assertThat(line.tags()).containsExactly("live", "duo");
            assertThat(line.instrument()).isEqualTo("octave-mandolin");
            assertThat(line.rigName()).isEqualTo("My “old” mandolin");
            assertThat(line.faults()).contains("hum:strong");
            assertThat(line.hasAudio()).isFalse();
        }
    }

    @Test
    void aTakeIsKeptOnceHoweverOftenItComes() {
        TakeToKeep take = KeptExamples.sketch(KeptExamples.EVENING, TakeWords.NONE);
        try (Journal journal = journal()) {
            assertThat(journal.keepNow(take)).isEqualTo(journal.keepNow(take));
            assertThat(journal.list(TakeFilter.ALL)).hasSize(1);
        }
    }

    @Test
    void theListIsNewestFirstAndFiltered() {
        try (Journal journal = journal()) {
            keep(journal, 0, new TakeWords("violin", "kitchen", "new bow, 100%", List.of("home")));
            keep(journal, 1, new TakeWords("mandolin", "Harp_Crown", "", List.of("live", "duo")));
            keep(journal, 2, new TakeWords("violin", "stage", "too loud", List.of("live")));
            assertThat(venues(journal, TakeFilter.ALL)).containsExactly("stage", "Harp_Crown", "kitchen");
            assertThat(venues(journal, TakeFilter.ALL.atMost(1))).containsExactly("stage");
            assertThat(venues(journal, TakeFilter.ALL.ofInstrument("Violin"))).containsExactly("stage", "kitchen");
            assertThat(venues(journal, TakeFilter.ALL.tagged("live"))).containsExactly("stage", "Harp_Crown");
            assertThat(venues(journal, TakeFilter.search("LOUD violin"))).containsExactly("stage");
            assertThat(venues(journal, TakeFilter.search("100%"))).containsExactly("kitchen");
            assertThat(venues(journal, TakeFilter.search("p_c"))).containsExactly("Harp_Crown");
            assertThat(venues(journal, TakeFilter.search("%"))).containsExactly("kitchen");
            assertThat(venues(journal, TakeFilter.ALL.between(Optional.of(KeptExamples.EVENING.plusDays(1).toInstant()), Optional.empty())))
                .containsExactly("stage", "Harp_Crown");
            assertThat(venues(journal, TakeFilter.ALL.between(Optional.empty(), Optional.of(KeptExamples.EVENING.plusDays(1).toInstant()))))
                .containsExactly("kitchen");
        }
    }

    @Test
    void aReadingIsFollowedOverTime() {
        try (Journal journal = journal()) {
            keep(journal, 5, TakeWords.NONE);
            keep(journal, 2, TakeWords.NONE);
            List<ReadingPoint> points = journal.points("truePeakDbtp", TakeFilter.ALL);
            assertThat(points).extracting(ReadingPoint::takeId).containsExactly(2L, 1L);
            assertThat(points).extracting(ReadingPoint::value).containsExactly(-9.0, -9.0);
            assertThat(points.get(1).days() - points.get(0).days()).isEqualTo(3);
            assertThat(journal.points("integratedLufs", TakeFilter.ALL)).as("silence is no value").isEmpty();
            assertThat(journal.points("truePeakDbtp", TakeFilter.ALL.ofInstrument("oud"))).isEmpty();
        }
    }

    @Test
    void wordsCanBeSaidLaterAndEventsAdded() {
        try (Journal journal = journal()) {
            keep(journal, 0, TakeWords.NONE);
            journal.say(1, new TakeWords("oud", "garden", "windy", List.of("outside")));
            assertThat(journal.take(1).line().note()).isEqualTo("windy");
            Event event = new Event("e1", KeptExamples.EVENING, EventKind.NEW_STRINGS, "oud", "bronze");
            journal.addNow(event);
            journal.addNow(event);
            assertThat(journal.events()).containsExactly(event);
            assertThat(event.concerns(journal.take(1).line())).isTrue();
            assertThatThrownBy(() -> journal.say(2, TakeWords.NONE)).hasMessage("journal: there is no take 2; see evenwood journal list");
            assertThatThrownBy(() -> journal.take(2)).hasMessage("journal: there is no take 2; see evenwood journal list");
        }
    }

    @Test
    void aSittingThatGoesOnIsWrittenAgain() {
        try (Journal journal = journal()) {
            journal.addNow(practice(60));
            journal.addNow(practice(120));
            assertThat(journal.practice()).containsExactly(practice(120));
        }
    }

    @Test
    void aRigIsStoredOnceForManyTakes() {
        TakeToKeep take = KeptExamples.measured();
        try (Journal journal = journal()) {
            for (int i = 0; i < 3; i++) {
                journal.keepNow(new TakeToKeep(KeptExamples.EVENING.plusDays(i), take.assessment(), take.rig(), TakeWords.NONE));
            }
            int rigs = journal.store().read(connection -> TakeTable.rows(connection, "SELECT COUNT(*) FROM rig", row -> row.getInt(1))).get(0);
            assertThat(rigs).isEqualTo(1);
        }
    }

    @Test
    void whileOneWritesAnotherReads() {
        try (Journal writing = journal(); Journal reading = journal()) {
            keep(writing, 0, TakeWords.NONE);
            assertThat(reading.list(TakeFilter.ALL)).hasSize(1);
            keep(writing, 1, TakeWords.NONE);
            assertThat(reading.list(TakeFilter.ALL)).hasSize(2);
        }
    }

    private static Practice practice(double seconds) {
        return new Practice("p", KeptExamples.EVENING, "oud", new Practice.Figures(seconds, seconds / 2, 40, -30, -20, -10, -23, -3, -2, -9, -6, 0));
    }

    private Journal journal() {
        return Journal.open(folder.resolve("journal.db"));
    }

    private static void keep(Journal journal, int day, TakeWords words) {
        journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING.plusDays(day), words));
    }

    private static List<String> venues(Journal journal, TakeFilter filter) {
        return journal.list(filter).stream().map(TakeLine::venue).toList();
    }
}
