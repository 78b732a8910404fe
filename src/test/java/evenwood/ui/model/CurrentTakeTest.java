package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.FaultChange;
import evenwood.coach.Move;
import evenwood.judge.Fault;
import evenwood.judge.ToneComparison;
import evenwood.rig.Presets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The current take without a screen: the demo, played faster than people do. */
class CurrentTakeTest {
    private static final double PACE = 20;
    private static final long PATIENCE_SECONDS = 120;
    @TempDir
    private Path folder;
    private CurrentTake take;
    private RigModel rig;

    @BeforeEach
    void begin() {
        rig = new RigModel(new Presets(folder), new Choices(folder.resolve("window.properties")));
        take = new CurrentTake(rig::inUse, PACE);
    }

    @AfterEach
    void end() {
        take.close();
    }

    @Test
    void aFileThatIsNotThereIsOneSentence() {
        take.start(new SoundChoice.Recording(folder.resolve("none.wav"), 0));
        await(() -> !take.now().problem().isEmpty());
        assertThat(Words.in(Locale.ENGLISH).say(take.now().problem())).isEqualTo("There is no file " + folder.resolve("none.wav") + ". Check where it is.");
        assertThat(Words.in(Locale.GERMAN).say(take.now().problem())).isEqualTo("Die Datei " + folder.resolve("none.wav") + " gibt es nicht. Sieh nach, wo sie liegt.");
        assertThat(take.now().isChecking()).isFalse();
    }

    @Test
    void theDemoIsCheckedWithProgressAndItsStripDrawn() {
        take.start(new SoundChoice.DemoChecked());
        assertThat(take.now().isChecking()).isTrue();
        await(() -> take.now().assessment().isPresent());
        assertThat(take.now().assessment().get().verdict().has(Fault.OVERDRIVEN)).isTrue();
        assertThat(take.now().isChecking()).isFalse();
        assertThat(take.strip().moments()).hasSizeGreaterThan(200);
        assertThat(take.soundAgain()).isPresent();
    }

    /** What "set it as on that night" ends in; the demo held against itself differs in nothing. */
    @Test
    void aTakeIsHeldAgainstAKeptOneUntilThatIsLetGo() {
        take.start(new SoundChoice.DemoChecked());
        await(() -> take.now().assessment().isPresent());

        take.like(Optional.of(new LikedTake(62, take.now().readings().orElseThrow())));
        await(() -> isAgainst(ToneComparison.Against.TAKE));

        assertThat(take.now().assessment().orElseThrow().verdict().tone().orElseThrow().difference().bands()).isNotEmpty()
            .allSatisfy(band -> assertThat(band.differenceDb()).isCloseTo(0, within(0.01)));
        assertThat(take.liked()).hasValueSatisfying(liked -> assertThat(liked.number()).isEqualTo(62));
        assertThat(BalancePicture.of(take.now().assessment(), Words.in(Locale.ENGLISH)).parts()).allSatisfy(part -> assertThat(part.words()).isEqualTo("as there"));
        take.like(Optional.empty());
        await(() -> isAgainst(ToneComparison.Against.INSTRUMENT));
    }

    private boolean isAgainst(ToneComparison.Against what) {
        return take.now().assessment().flatMap(each -> each.verdict().tone()).filter(tone -> tone.against() == what).isPresent();
    }

    @Test
    void aCheckThatIsGivenUpKeepsWhatWasMeasured() {
        take.start(new SoundChoice.DemoChecked());
        take.cancel();
        await(() -> take.now().assessment().isPresent());
        assertThat(take.now().readings().orElseThrow().take().durationSeconds()).isLessThan(50);
    }

    /** Over a live take, over a check under way, over one that was given up, over nothing: it always comes to its end. */
    @Test
    void theDemoCheckComesToItsEndWhateverItFollows() {
        for (int i = 0; i < 20; i++) {
            switch (i % 4) {
                case 0 -> {
                    take.start(new SoundChoice.DemoPlayed());
                    await(() -> take.now().readings().isPresent());
                }
                case 1 -> take.start(new SoundChoice.DemoChecked());
                case 2 -> {
                    take.start(new SoundChoice.DemoChecked());
                    take.cancel();
                    take.judgeAgain();
                }
                default -> take.stop();
            }
            int number = take.start(new SoundChoice.DemoChecked());
            await(() -> take.now().assessment().isPresent());
            assertThat(take.number()).isEqualTo(number);
            assertThat(take.now().choice()).contains(new SoundChoice.DemoChecked());
            assertThat(take.now().isChecking()).isFalse();
            assertThat(take.now().isLive()).isFalse();
            assertThat(take.now().readings().orElseThrow().take().durationSeconds()).as("round " + i).isGreaterThan(57);
            assertThat(take.now().problem()).isEqualTo(Problem.NONE);
        }
    }

    @Test
    void aTakeOnceLeftSaysNothingMore() {
        take.start(new SoundChoice.DemoPlayed());
        await(() -> take.now().assessment().isPresent());
        take.start(new SoundChoice.Recording(folder.resolve("none.wav"), 0));
        await(() -> !take.now().problem().isEmpty());
        assertThat(take.now().readings()).isEmpty();
        assertThat(take.now().problem().key()).isEqualTo("problem.file-missing");
    }

    @Test
    void theMicrophoneIsRemarkedOnAndTheChosenPickupCountsAtOnce() {
        take.start(new SoundChoice.DemoChecked());
        await(() -> take.now().assessment().isPresent());
        assertThat(take.now().assessment().get().verdict().wiring()).isEmpty();
        rig.choose(evenwood.rig.Tap.MICROPHONE);
        rig.choose(RigModel.Part.PICKUP, "piezo-under-saddle");
        take.judgeAgain();
        await(() -> take.now().assessment().get().verdict().wiring().isPresent());
        assertThat(take.now().assessment().get().verdict().missing()).contains(evenwood.judge.Statement.of("microphone.compare"));
    }

    @Test
    void theGuidedCheckOnTheDemoEndsAndTheSecondOneIsBetter() {
        GuideModel guide = new GuideModel();
        take.start(new SoundChoice.DemoPlayed());
        lead(guide);
        assertThat(take.now().assessment().orElseThrow().verdict().has(Fault.OVERDRIVEN)).isTrue();
        assertThat(take.now().assessment().get().comparison()).isEmpty();
        Move first = take.now().assessment().get().moves().get(0);
        take.again(1);
        lead(guide);
        await(() -> take.now().assessment().flatMap(each -> each.comparison()).isPresent());
        assertThat(take.now().assessment().get().moves()).as("nothing is turned back").noneMatch(move -> move.control().equals(first.control()) && move.changeDb().orElse(0) > 0);
        assertThat(take.now().assessment().get().comparison().orElseThrow().faults()).as("the hum went down with the gain, no more and no less")
            .anyMatch(change -> change.fault() == Fault.HUM && change.change() == FaultChange.Change.SAME);
        assertThat(take.now().assessment().get().comparison().orElseThrow().faults())
            .anyMatch(change -> change.fault() == Fault.OVERDRIVEN && change.change() == FaultChange.Change.BETTER);
    }

    @Test
    void pausedNothingCounts() {
        GuideModel guide = new GuideModel();
        guide.begin();
        guide.pauseOrGoOn();
        Words words = Words.in(Locale.ENGLISH);
        assertThat(guide.picture(words).asking()).isEqualTo("Paused; nothing counts now.");
        assertThat(guide.asked()).isEmpty();
        guide.pauseOrGoOn();
        assertThat(guide.picture(words).steps().get(0).standing()).isEqualTo(StepLine.Standing.NOW);
        guide.skip();
        assertThat(guide.picture(words).steps().get(0).standing()).isEqualTo(StepLine.Standing.DONE);
        guide.redo(evenwood.coach.GuidedCheck.Step.QUIET);
        assertThat(guide.picture(words).steps().get(0).standing()).isEqualTo(StepLine.Standing.NOW);
    }

    private void lead(GuideModel guide) {
        guide.begin();
        take.askDemo(guide.asked());
        await(() -> {
            guide.hear(take.now());
            take.askDemo(guide.asked());
            return guide.isOver();
        });
        take.stop();
        await(() -> take.now().state().map(state -> state.phase() == evenwood.live.LiveState.Phase.STOPPED).orElse(false)
            && take.now().assessment().isPresent());
    }

    private static void await(BooleanSupplier there) {
        long end = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!there.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited " + PATIENCE_SECONDS + " s in vain").isLessThan(end);
            LockSupport.parkNanos(5_000_000);
        }
    }
}
