package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.journal.Journal;
import evenwood.journal.Practice;
import evenwood.live.LiveState;
import evenwood.live.SignalReading;
import evenwood.takes.ReadingsSketch;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class PracticeLogTest {
    private static final SoundChoice INPUT = new SoundChoice.Live("", 1);
    @TempDir
    Path folder;
    private Path file;
    private Now now = Now.NOTHING;
    private PracticeLog log;

    @BeforeEach
    void fresh() {
        file = folder.resolve("journal.db");
        log = new PracticeLog(() -> now, () -> "violin", new Choices(folder.resolve("window.properties")), file);
    }

    @Test
    void nothingIsWrittenUntilItIsWanted() {
        hears(INPUT, 100, LiveState.Phase.RUNNING);
        hears(INPUT, 200, LiveState.Phase.STOPPED);

        assertThat(log.isWanted()).isFalse();
        assertThat(Files.exists(file)).isFalse();
    }

    @Test
    void wantingIsRemembered() {
        log.want(true);

        assertThat(new PracticeLog(() -> now, () -> "", new Choices(folder.resolve("window.properties")), file).isWanted()).isTrue();
    }

    @Test
    void aSittingThatGoesOnStaysOneLineAndGrowsEveryMinute() {
        log.want(true);
        for (int seconds = 30; seconds <= 200; seconds += 10) {
            hears(INPUT, seconds, LiveState.Phase.RUNNING);
        }

        assertThat(written()).singleElement().satisfies(each -> {
            assertThat(each.instrument()).isEqualTo("violin");
            assertThat(each.figures().playingSeconds()).isGreaterThan(170);
        });
    }

    @Test
    void theEndIsWrittenAtOnceAndANewTakeIsANewSitting() {
        log.want(true);
        hears(INPUT, 40, LiveState.Phase.STOPPED);
        hears(INPUT, 20, LiveState.Phase.RUNNING);
        now = Now.NOTHING;
        log.look();

        assertThat(written()).extracting(each -> Math.round(each.figures().playingSeconds())).containsExactly(40L, 20L);
    }

    @Test
    void theDemoARecordingAndAFewSecondsOfTryingOutAreNoPractice() {
        log.want(true);
        hears(new SoundChoice.DemoPlayed(), 300, LiveState.Phase.STOPPED);
        hears(new SoundChoice.Recording(Path.of("take.wav"), 0), 300, LiveState.Phase.STOPPED);
        hears(INPUT, 9, LiveState.Phase.STOPPED);
        log.close();

        assertThat(Files.exists(file)).isFalse();
    }

    @Test
    void whatWasNotWrittenYetIsWrittenWhenTheWindowCloses() {
        log.want(true);
        hears(INPUT, 30, LiveState.Phase.RUNNING);
        log.close();

        assertThat(written()).hasSize(1);
    }

    @Test
    void aJournalThatCannotBeWrittenIsOneSentenceAndStopsNothing() throws Exception {
        Files.writeString(file, "this is no journal, it is a letter to my aunt and long enough to be read as one");
        log.want(true);
        hears(INPUT, 90, LiveState.Phase.RUNNING);

        assertThat(log.problem()).startsWith("journal").doesNotContain("\n");
    }

    @Test
    void theDaysAreCountedAndTrebleIsToldOnceFourSittingsAreKnown() {
        List<Practice> all = new ArrayList<>();
        for (int day = 3; day >= 0; day--) {
            all.add(new Practice("sitting " + day, OffsetDateTime.now().minusDays(day), "violin",
                new Practice.Figures(700, 600, 900, -40, -30, -20, -23, -3, -4, day == 0 ? -9 : -6, -8, 0)));
        }

        PracticePicture picture = PracticePicture.of(all, LocalDate.now(), Words.in(Locale.GERMAN));

        assertThat(picture.total()).isEqualTo("40 Minuten an 4 der letzten 30 Tage, 4 Tage hintereinander");
        assertThat(picture.minutes()).hasSize(30).endsWith(10.0, 10.0, 10.0, 10.0).startsWith(0.0);
        assertThat(picture.sittings().get(0).treble()).isEqualTo("−3 dB");
        assertThat(PracticePicture.of(all.subList(1, 4), LocalDate.now(), Words.in(Locale.GERMAN)).sittings().get(0).treble()).isEmpty();
    }

    private void hears(SoundChoice choice, double seconds, LiveState.Phase phase) {
        now = new Now(now.number() + 1, Optional.of(choice), Optional.of(new ReadingsSketch().quietSeconds(0).playing(seconds, -24).readings()), Optional.empty(),
            Optional.of(new LiveState(phase, "", 1, 0, List.of(), SignalReading.ALIVE, "")), -1, Problem.NONE);
        log.look();
    }

    private List<Practice> written() {
        try (Journal journal = Journal.open(file)) {
            return journal.practice();
        }
    }
}
