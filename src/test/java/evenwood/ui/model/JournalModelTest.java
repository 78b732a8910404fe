package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.Reading;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.takes.ReadingsSketch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class JournalModelTest {
    private static final OffsetDateTime FIRST = OffsetDateTime.parse("2026-01-10T20:15:00Z");
    @TempDir
    Path folder;
    private Path file;
    private JournalModel model;
    private final JournalWords german = new JournalWords(Words.in(Locale.GERMAN));

    @BeforeEach
    void fresh() {
        file = folder.resolve("journal.db");
        model = new JournalModel(file);
    }

    @Test
    void lookingAtAJournalThatIsNotThereShowsAnEmptyOneAndMakesNoFile() {
        model.look();

        assertThat(answer(model.found()).all()).isZero();
        assertThat(answer(model.trend().overTime()).trend().points()).isEmpty();
        assertThat(Files.exists(file)).isFalse();
    }

    @Test
    void aTakeThatIsKeptIsFoundByItsWordsInThePlayersLanguage() {
        model.keep(KeptExamples.measured().assessment(), Optional.of(KeptExamples.rig()));
        assertThat(answer(model.kept())).isEqualTo(1);

        model.search("hum");

        assertThat(answer(model.found()).takes()).singleElement().satisfies(take -> {
            assertThat(german.found(take)).contains("Brummen (");
            assertThat(german.when(take)).startsWith("1. ");
        });
        model.search("no-such-word");
        assertThat(answer(model.found()).takes()).isEmpty();
        assertThat(model.found().answer().value().orElseThrow().all()).isEqualTo(1);
    }

    @Test
    void ofThreePickedTakesTheFirstIsLetGoAndTheOlderIsComparedWith() {
        keepSketches(3, i -> -84);

        model.pick(3);
        model.pick(1);
        model.pick(2);
        assertThat(model.picked()).containsExactly(1L, 2L);
        model.pick(1);
        model.pick(3);

        assertThat(answer(model.compared()).before().line().id()).isEqualTo(2);
        assertThat(answer(model.compared()).after().line().id()).isEqualTo(3);
        model.pick(3);
        assertThat(model.compared().answer().value()).isEmpty();
    }

    @Test
    void twoEqualTakesDifferInNothingAndItIsSaidThatTooFewTakesAreThereToKnow() {
        keepSketches(2, i -> -84);
        model.pick(1);
        model.pick(2);

        ComparePicture picture = ComparePicture.of(answer(model.compared()), Words.in(Locale.ENGLISH));

        assertThat(picture.lines()).singleElement().asString().contains("the same");
        assertThat(picture.readings()).isNotEmpty().noneMatch(ComparePicture.Row::isReal).allSatisfy(row -> assertThat(row.verdict()).isEmpty());
        assertThat(picture.known()).contains("too few takes");
        assertThat(picture.title()).contains("1. ").contains("2. ");
    }

    @Test
    void aReadingThatReallyChangedIsCalledSoAndTheOthersChance() {
        keepSketches(20, i -> i < 19 ? -84 : -70);
        model.pick(1);
        model.pick(20);

        ComparePicture picture = ComparePicture.of(answer(model.compared()), Words.in(Locale.ENGLISH));

        assertThat(picture.readings()).filteredOn(ComparePicture.Row::isReal).extracting(ComparePicture.Row::name).contains("Hiss").doesNotContain("Usual level");
        assertThat(picture.readings()).filteredOn(row -> row.name().equals("Hiss")).singleElement()
            .satisfies(row -> assertThat(row.change()).startsWith("+1").endsWith(" dB"));
    }

    @Test
    void aChannelThatGotNoisierIsShadedAndTold() {
        keepSketches(40, i -> i < 20 ? -84 : -78);
        model.trend().reading(Reading.HISS);

        TrendModel.OverTime over = answer(model.trend().overTime());
        TrendPicture picture = TrendPicture.of(over.trend(), german);

        assertThat(picture.dots()).hasSize(40);
        assertThat(picture.spans()).isNotEmpty();
        assertThat(german.supported(over.trend())).isNotEmpty();
        assertThat(over.suspicions()).isNotEmpty().allSatisfy(each -> assertThat(german.suspicion(each)).isNotBlank());
    }

    @Test
    void whatHappenedTodayIsKeptInTheJournal() {
        keepSketches(1, i -> -84);

        model.trend().happened(EventKind.NEW_STRINGS, LocalDate.now(), "");
        answer(model.trend().overTime());

        try (Journal journal = Journal.open(file)) {
            assertThat(journal.events()).singleElement().satisfies(event -> {
                assertThat(event.kind()).isEqualTo(EventKind.NEW_STRINGS);
                assertThat(event.at()).isAfter(OffsetDateTime.now().minusMinutes(1));
            });
        }
    }

    /** Strings are put on before they are played, so an evening's take of the same day comes after. */
    @Test
    void whatHappenedOnAnEarlierDayHappenedBeforeTheTakesOfThatDay() {
        keepSketches(1, i -> -84);
        LocalDate day = FIRST.atZoneSameInstant(ZoneId.systemDefault()).toLocalDate();

        model.trend().happened(EventKind.NEW_STRINGS, day, " bronze ");
        answer(model.trend().overTime());
        model.chosen().open(1);

        assertThat(answer(model.chosen().opened()).events()).singleElement().satisfies(event -> assertThat(event.note()).isEqualTo("bronze"));
    }

    @Test
    void onlyTakesOfTheLastDaysAreListedWhenThatIsWanted() {
        keepSketches(3, i -> -84);
        model.keep(KeptExamples.assessment(new ReadingsSketch()), Optional.empty());
        answer(model.kept());

        model.period(7);

        assertThat(answer(model.found()).takes()).singleElement().satisfies(take -> assertThat(take.id()).isEqualTo(4));
        assertThat(answer(model.found()).all()).isEqualTo(4);
    }

    @Test
    void everyReadingThatCanBeFollowedExistsAndHasAName() {
        for (Locale locale : Words.LANGUAGES) {
            JournalWords words = new JournalWords(Words.in(locale));
            assertThat(TrendModel.READINGS).allSatisfy(name -> {
                assertThat(Reading.named(name)).isPresent();
                assertThat(words.reading(name)).isNotBlank();
            });
            for (EventKind kind : EventKind.values()) {
                assertThat(Words.in(locale).has("journal.event." + kind.id())).isTrue();
            }
        }
    }

    @Test
    void aBrokenJournalIsOneSentence() throws java.io.IOException {
        Files.writeString(file, "this is no journal, it is a letter to my aunt and long enough to be read as one");

        model.look();
        answerOf(model.found());

        assertThat(model.found().answer().value()).isEmpty();
        assertThat(Words.in(java.util.Locale.GERMAN).say(model.found().answer().problem())).startsWith("Das Tagebuch " + file).contains("beschädigt").doesNotContain("\n");
    }

    private interface HissDbfs {
        double of(int take);
    }

    private void keepSketches(int count, HissDbfs hiss) {
        try (Journal journal = Journal.open(file)) {
            for (int i = 0; i < count; i++) {
                ReadingsSketch sketch = new ReadingsSketch().playing(50, -24).noise(hiss.of(i) + 1 + i % 3 * 0.2, -90, -92, hiss.of(i) + i % 3 * 0.2);
                journal.keepNow(new TakeToKeep(FIRST.plusDays(2L * i), KeptExamples.assessment(sketch), Optional.empty(),
                    new TakeWords("violin", "", "", List.of())));
            }
            assertThat(journal.list(TakeFilter.ALL)).hasSize(count);
        }
    }

    private static <T> T answer(Later<T> later) {
        answerOf(later);
        return later.answer().value().orElseThrow(() -> new AssertionError(later.answer().problem().toString()));
    }

    private static void answerOf(Later<?> later) {
        while (later.isWaiting()) {
            java.util.concurrent.locks.LockSupport.parkNanos(2_000_000);
        }
    }
}
