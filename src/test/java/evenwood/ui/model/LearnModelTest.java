package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaw;
import evenwood.eq.EqChain;
import evenwood.eq.LearnedLaw;
import evenwood.eq.NominalLaw;
import evenwood.eq.RigInUse;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A control learned in the window, without a screen: the demo's player, and its amp that does not do what its marking says. */
class LearnModelTest {
    private static final double PACE = 20;
    private static final long PATIENCE_SECONDS = 120;
    private static final Words WORDS = Words.in(Locale.ENGLISH);
    @TempDir
    private Path folder;
    private RigModel rig;
    private CurrentTake take;
    private LearnModel model;

    @BeforeEach
    void begin() {
        rig = rig();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        take = new CurrentTake(rig::inUse, PACE);
        model = new LearnModel(rig);
        model.begin(control("Bass"));
    }

    @AfterEach
    void end() {
        take.close();
    }

    @Test
    void theControlIsLearnedAtEveryPositionAndUsedFromThenOn() {
        Setting stood = setting("Bass");
        assertThat(model.picture(WORDS).asking()).isEqualTo("Set Bass to 0 and turn nothing else.");
        hear(false);
        assertThat(setting("Bass")).as("it stands where it was heard").isEqualTo(stood.withGain(0));
        assertThat(model.isEnough()).isFalse();
        hear(false);
        assertThat(model.isEnough()).isTrue();
        hear(false);
        await(this::isShown);

        LearnPicture picture = model.picture(WORDS);
        assertThat(picture.note()).contains(LearnedFile.beside(rig.file()).toString());
        assertThat(picture.curves().orElseThrow().curves()).hasSize(2);
        assertThat(picture.curves().get().words()).hasSize(3);
        RigInUse later = rig().inUse().orElseThrow();
        Control bass = control("Bass");
        EqChain truth = DemoAmp.at(stood, stood.withGain(10));
        assertThat(farthestDb(later.laws().of(bass), stood, truth)).isLessThan(0.6 * farthestDb(new NominalLaw(), stood, truth));
    }

    @Test
    void whatTheDemoTeachesIsShownAndNotKept() {
        hear(true);
        hear(true);
        model.learn();
        await(this::isShown);

        assertThat(model.picture(WORDS).note()).contains("not kept");
        assertThat(rig.learned()).isEmpty();
        assertThat(LearnedFile.beside(rig.file())).doesNotExist();
    }

    @Test
    void whileItIsHeardTheProgressIsWhatWasPlayedAndNotTheClock() {
        model.listen(take.start(new SoundChoice.DemoPlayed()), true);
        assertThat(model.picture(WORDS).steps().get(0).done()).isZero();
        await(() -> {
            model.hear(take.now(), take.number());
            return model.picture(WORDS).steps().get(0).done() > 0;
        });
        assertThat(take.now().readings().orElseThrow().activity().playingSeconds()).isPositive();
    }

    @Test
    void anotherTakeThatBeginsBreaksThePositionOffAndLosesNothingBefore() {
        hear(true);
        model.listen(take.start(new SoundChoice.DemoPlayed()), true);
        take.start(new SoundChoice.DemoPlayed());
        model.hear(take.now(), take.number());

        assertThat(model.stage()).isEqualTo(LearnModel.Stage.SET);
        assertThat(model.picture(WORDS).note()).isNotBlank();
        assertThat(model.picture(WORDS).steps()).extracting(StepLine::standing)
            .containsExactly(StepLine.Standing.DONE, StepLine.Standing.NOW, StepLine.Standing.LATER);
    }

    @Test
    void thePositionBeforeCanBeRedone() {
        hear(true);
        model.redo();
        assertThat(model.asked()).isEqualTo(setting("Bass").withGain(0));
        assertThat(model.canRedo()).isFalse();
    }

    @Test
    void thePlayerMaySetItSomewhereElse() {
        model.ask(setting("Bass").withGain(2));
        assertThat(model.picture(WORDS).asking()).isEqualTo("Set Bass to 2 and turn nothing else.");
    }

    @Test
    void givenUpNothingIsLeftOfIt() {
        model.cancel();
        assertThat(model.stage()).isEqualTo(LearnModel.Stage.CHOOSE);
        assertThat(model.picture(WORDS).curves()).isEmpty();
    }

    @Test
    void aForgottenControlIsBelievedItsMarkingAgain() {
        List<Double> flat = LearnedControl.FREQUENCIES_HZ.stream().map(any -> 0.0).toList();
        rig.learn(new LearnedControl("Bass", LearnedControl.How.SWEEP, List.of(new LearnedControl.Curve(setting("Bass").withGain(0), flat, flat),
            new LearnedControl.Curve(setting("Bass").withGain(10), flat, flat)), List.of()));
        assertThat(rig().learned()).singleElement();
        RigInUse forCommands = RigInUse.read(rig.file(), new Presets(folder));
        assertThat(forCommands.rig().settings()).isEqualTo(rig.settings());
        assertThat(forCommands.laws().of(control("Bass"))).isInstanceOf(LearnedLaw.class);
        rig.forget("Bass");
        assertThat(rig().learned()).isEmpty();
    }

    @Test
    void atThePickupItselfThereIsNothingToLearn() {
        model.cancel();
        rig.choose(Tap.PICKUP);
        assertThat(model.controls()).isEmpty();
        assertThat(model.picture(WORDS).asking()).contains("nothing you turn is heard");
    }

    @Test
    void aLevelIsOnlyTurnedDownToBeLearned() {
        rig.choose(RigModel.Part.CONTROLS, "preamp-notch");
        Setting volume = rig.settings().stream().filter(each -> !each.control().shapesTone()).findFirst().orElseThrow();
        assertThat(LearnPositions.of(volume)).hasSizeGreaterThan(1).allMatch(each -> each.gainDb() <= volume.gainDb());
    }

    @Test
    void everyShippedControlHasTwoPositionsToLearn() {
        for (String id : rig.ids(RigModel.Part.CONTROLS)) {
            rig.choose(RigModel.Part.CONTROLS, id);
            assertThat(model.controls()).as(id).hasSameSizeAs(rig.settings());
        }
    }

    private void hear(boolean demo) {
        take.askDemo(Optional.of(evenwood.coach.GuidedCheck.Step.PLAY));
        model.listen(take.start(new SoundChoice.DemoPlayed(), model.demoControls()), demo);
        await(() -> {
            if (model.hear(take.now(), take.number())) {
                take.stop();
            }
            return model.stage() != LearnModel.Stage.HEAR;
        });
        assertThat(model.picture(WORDS).note()).isNotEqualTo(WORDS.say("learn.note.broken-off"));
    }

    private boolean isShown() {
        model.hear(take.now(), take.number());
        return model.stage() == LearnModel.Stage.SHOW;
    }

    /** How far a law is from the truth, at its worst from 50 Hz to 5 kHz. */
    private static double farthestDb(ControlLaw law, Setting from, EqChain truth) {
        BandResponse response = new BandResponse(ThirdOctave.FROM_50_HZ_TO_16_KHZ, 48_000);
        double[] said = law.bandsDb(from.withGain(10), response);
        double[] base = law.bandsDb(from, response);
        double[] really = response.db(truth);
        double most = 0;
        for (int i = 0; i < said.length && response.bands().get(i).centreHz() < 5000; i++) {
            most = Math.max(most, Math.abs(said[i] - base[i] - really[i]));
        }
        return most;
    }

    private RigModel rig() {
        return new RigModel(new Presets(folder), new Choices(folder.resolve("window.properties")));
    }

    private Control control(String name) {
        return setting(name).control();
    }

    private Setting setting(String name) {
        return rig.settings().stream().filter(each -> each.control().name().equals(name)).findFirst().orElseThrow();
    }

    private static void await(BooleanSupplier there) {
        long end = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!there.getAsBoolean()) {
            assertThat(System.nanoTime()).as("waited " + PATIENCE_SECONDS + " s in vain").isLessThan(end);
            LockSupport.parkNanos(5_000_000);
        }
    }
}
