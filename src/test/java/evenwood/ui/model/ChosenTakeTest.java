package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.coach.Recall;
import evenwood.eq.RigInUse;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.takes.ReadingsSketch;
import java.io.ByteArrayInputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** What can be done with one kept take: its words, its sheet, setting everything as it was. */
@Timeout(60)
class ChosenTakeTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));
    private static final Words ENGLISH = Words.in(Locale.ENGLISH);
    @TempDir
    Path folder;
    private JournalModel model;

    @BeforeEach
    void oneWithARigAndOneWithout() {
        Path file = folder.resolve("journal.db");
        try (Journal journal = Journal.open(file)) {
            journal.keepNow(new TakeToKeep(KeptExamples.EVENING, KeptExamples.assessment(new ReadingsSketch().playing(50, -24)), Optional.of(kept()),
                new TakeWords("violin", "The Harp & Crown", "", List.of("live"))));
            journal.keepNow(KeptExamples.sketch(KeptExamples.EVENING.plusDays(1), new TakeWords("oud", "", "", List.of())));
        }
        model = new JournalModel(file);
        model.chosen().open(1);
        answer(model.chosen().opened());
    }

    private static Rig kept() {
        return turned(KeptExamples.rig(), "amp-bass-mid-treble", 3);
    }

    /** The amp's bass stands there, everything else in the middle. */
    private static Rig turned(Rig rig, String controls, double bass) {
        var set = PRESETS.controls(controls);
        return new Rig(rig.name(), rig.instrument(), rig.tap(), set, set.controls().stream()
            .map(control -> control.name().equals("Bass") ? Setting.neutral(control).withGain(bass) : Setting.neutral(control)).toList());
    }

    @Test
    void wordsThatAreChangedAreThereAgainInTheListAndInTheTake() {
        model.chosen().say(new TakeWords("violin", "Kitchen", "new bridge", List.of("duo")));

        assertThat(answer(model.chosen().opened()).take().line().note()).isEqualTo("new bridge");
        model.search("kitchen duo");
        assertThat(answer(model.found()).takes()).singleElement().satisfies(line -> assertThat(line.id()).isEqualTo(1));
    }

    @Test
    void onTheSameControlsTheListLeadsFromThePresentPlaceToTheKeptOne() {
        Optional<Rig> present = Optional.of(turned(kept(), "amp-bass-mid-treble", 6));
        model.chosen().askRecall(present.map(RigInUse::nominal));

        RecallPicture picture = RecallPicture.of(answer(model.chosen().recall()), present, ENGLISH);

        RecallPicture.Row bass = picture.rows().stream().filter(row -> row.control().equals("Bass")).findFirst().orElseThrow();
        assertThat(bass.says()).isEqualTo("6 → 3");
        assertThat(bass.there()).isFalse();
        assertThat(bass.setting().orElseThrow().gain()).hasValue(3);
        assertThat(picture.rows()).filteredOn(row -> !row.equals(bass)).allMatch(RecallPicture.Row::there);
    }

    @Test
    void onOtherControlsTheSoundIsTranslatedAndEveryPositionCanBeTaken() {
        Optional<Rig> present = Optional.of(turned(kept(), "graphic-ten-band", 0));
        model.chosen().askRecall(present.map(RigInUse::nominal));

        Recall recall = answer(model.chosen().recall());
        RecallPicture picture = RecallPicture.of(recall, present, ENGLISH);

        assertThat(recall.translated()).isTrue();
        assertThat(picture.words()).hasSize(2);
        assertThat(picture.rows()).filteredOn(row -> !row.there() && row.says().contains("→")).isNotEmpty()
            .allSatisfy(row -> assertThat(row.setting()).isPresent());
    }

    @Test
    void withoutControlsOfOnesOwnThePositionsAreToldAndNoneCanBeTaken() {
        model.chosen().askRecall(Optional.empty());

        RecallPicture picture = RecallPicture.of(answer(model.chosen().recall()), Optional.empty(), Words.in(Locale.GERMAN));

        assertThat(picture.rows()).extracting(RecallPicture.Row::says).contains("auf 3");
        assertThat(picture.rows()).allSatisfy(row -> assertThat(row.setting()).isEmpty());
    }

    @Test
    void theSheetIsAPictureAndIsSavedInEveryFormByItsEnding() throws Exception {
        model.chosen().askSheet(ENGLISH);

        assertThat(ImageIO.read(new ByteArrayInputStream(answer(model.chosen().sheet()))).getHeight()).isGreaterThan(1000);
        for (String ending : ChosenTake.SHEET_ENDINGS) {
            Path to = folder.resolve("sheet" + ending);
            model.chosen().saveSheet(to, ENGLISH);
            assertThat(answer(model.chosen().saved())).isEqualTo(to);
        }
        assertThat(Files.readString(folder.resolve("sheet.html"))).contains("The Harp &amp; Crown");
        assertThat(Files.readString(folder.resolve("sheet.svg"))).startsWith("<svg");
        assertThat(ImageIO.read(folder.resolve("sheet.png").toFile())).isNotNull();
        try (var pdf = Loader.loadPDF(folder.resolve("sheet.pdf").toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(1);
        }
    }

    @Test
    void soundThatWasKeptIsAFileAgain() throws Exception {
        byte[] flac = {'f', 'L', 'a', 'C', 1, 2, 3};
        long number;
        try (Journal journal = Journal.open(model.file())) {
            number = journal.keepNow(new TakeToKeep("with-sound", KeptExamples.EVENING, KeptExamples.assessment(new ReadingsSketch()), Optional.empty(), TakeWords.NONE,
                Optional.of(flac)));
        }
        model.chosen().open(number);
        assertThat(answer(model.chosen().opened()).take().line().hasAudio()).isTrue();

        model.chosen().askSound();

        assertThat(answer(model.chosen().sound())).hasBinaryContent(flac).hasExtension("flac");
    }

    @Test
    void aSetOfInstrumentsHasAPageForEach() throws Exception {
        model.chosen().saveSheetsOfAllInstruments(folder.resolve("all.pdf"), ENGLISH);

        try (var pdf = Loader.loadPDF(answer(model.chosen().saved()).toFile())) {
            assertThat(pdf.getNumberOfPages()).isEqualTo(2);
        }
    }

    @Test
    void aSheetThatCannotBeWrittenIsOneSentenceWithWhatToDo() {
        model.chosen().saveSheet(folder.resolve("no such folder").resolve("sheet.pdf"), ENGLISH);

        settled(model.chosen().saved());
        assertThat(ENGLISH.say(model.chosen().saved().answer().problem())).contains("sheet.pdf").contains("another folder").doesNotContain("Exception");
    }

    private static <T> T answer(Later<T> later) {
        settled(later);
        return later.answer().value().orElseThrow(() -> new AssertionError(later.answer().problem()));
    }

    private static void settled(Later<?> later) {
        while (later.isWaiting()) {
            java.util.concurrent.locks.LockSupport.parkNanos(2_000_000);
        }
    }
}
