package evenwood.ui.screen;

import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.Practice;
import evenwood.journal.Reading;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.judge.ToneComparison;
import evenwood.takes.ReadingsSketch;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.LikedTake;
import evenwood.ui.model.RigModel;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;

/** The journal's pages, with takes and practice that were invented for them. */
final class JournalShots {
    private final WindowCamera camera;
    private final Shell shell;
    private final CurrentTake take;
    private final RigModel rig;
    private final Choices choices;

    JournalShots(WindowCamera camera, Shell shell, CurrentTake take, RigModel rig, Choices choices) {
        this.camera = camera;
        this.shell = shell;
        this.take = take;
        this.rig = rig;
        this.choices = choices;
    }

    void all() {
        camera.shots("journal", "journal-empty", this::answered);
        OffsetDateTime first = OffsetDateTime.parse("2026-01-10T20:15:00Z");
        SplittableRandom random = new SplittableRandom(1);
        long before;
        long after;
        try (Journal journal = Journal.open(Path.of(choices.get("journal.file", "")))) {
            for (int i = 0; i < 60; i++) {
                double hiss = -84 + random.nextGaussian() + (i < 38 ? 0 : 5);
                journal.keepNow(new TakeToKeep(first.plusDays(4L * i), KeptExamples.assessment(new ReadingsSketch().playing(50, -24 + random.nextGaussian())
                    .truePeakDbtp(-12 + random.nextGaussian()).dynamics(-30 + random.nextGaussian(), -22 + random.nextGaussian(), -13 + random.nextGaussian(), 80)
                    .noise(hiss + 1, -52 + random.nextGaussian(), -60 + random.nextGaussian(), hiss)), Optional.empty(), new TakeWords("octave-mandolin", i % 3 == 0 ? "The Harp & Crown" : "", "", List.of())));
            }
            journal.addNow(new Event("1", first.plusDays(70), EventKind.NEW_STRINGS, "", ""));
            journal.addNow(new Event("2", first.plusDays(160), EventKind.NEW_CABLE, "", ""));
            TakeWords words = new TakeWords("octave-mandolin", "The Harp & Crown", "strings a week old", List.of("live"));
            before = journal.keepNow(new TakeToKeep(first.plusDays(244), KeptExamples.measured().assessment(), KeptExamples.measured().rig(), words));
            after = journal.keepNow(new TakeToKeep(first.plusDays(245), take.now().assessment().orElseThrow(), rig.rig(), words));
            for (int i = 0; i < 24; i++) {
                int day = random.nextInt(30);
                double seconds = 300 + random.nextInt(2400);
                journal.addNow(new Practice("practice " + i, OffsetDateTime.now().minusDays(day), i % 5 == 0 ? "violin" : "octave-mandolin",
                    new Practice.Figures(seconds * 1.3, seconds, 900, -41 + random.nextGaussian(), -30 + random.nextGaussian(), -19 + random.nextGaussian(),
                        -22 + random.nextGaussian(), -3, -4, -6 + random.nextGaussian(), -8, 0)));
            }
        }
        rig.settings().stream().filter(setting -> setting.gain().isPresent()).limit(3)
            .forEach(setting -> rig.set(setting.withGain(setting.control().gain().orElseThrow().settable(setting.gain().getAsDouble() + 3))));
        shell.journal().trend().reading(Reading.HISS);
        section("list", "journal-list");
        shell.journal().chosen().open(after);
        section("take", "journal-take");
        section("sheet", "journal-sheet");
        section("time", "journal-time");
        section("practice", "journal-practice");
        section("export", "journal-export");
        shell.journal().pick(before);
        shell.journal().pick(after);
        section("compare", "journal-compare");
        take.like(Optional.of(new LikedTake(after, take.now().readings().orElseThrow())));
        WindowCamera.await(() -> take.now().assessment().flatMap(each -> each.verdict().tone()).filter(tone -> tone.against() == ToneComparison.Against.TAKE).isPresent());
        camera.page("play", "journal-liked");
        take.like(Optional.empty());
    }

    private void section(String id, String name) {
        camera.shots("journal", name, () -> {
            ((JournalScreen) shell.opened()).open(id);
            answered();
        });
    }

    /** What the journal page asked for is there and shown; one answer may ask for the next. */
    private void answered() {
        JournalModel journal = shell.journal();
        for (int i = 0; i < 3; i++) {
            WindowCamera.await(() -> List.of(journal.found(), journal.trend().overTime(), journal.compared(), journal.practised(), journal.chosen().opened(), journal.chosen().sheet(),
                journal.chosen().recall()).stream().noneMatch(Later::isWaiting));
            ((JournalScreen) shell.opened()).look();
        }
    }
}
