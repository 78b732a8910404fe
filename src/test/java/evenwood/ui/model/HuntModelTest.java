package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.hunt.EarthRefusal;
import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSoFar;
import evenwood.report.HuntPicture;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable.Part;
import evenwood.rig.Presets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

@Timeout(60)
class HuntModelTest {
    @TempDir
    Path folder;
    private HuntModel model;

    @BeforeEach
    void fresh() {
        model = new HuntModel(new RigModel(new Presets(folder), new Choices(folder.resolve("window.properties"))));
    }

    @Test
    void beforeAnythingWasHeardThereIsNoPicture() {
        assertThat(model.picture(Words.in(Locale.ENGLISH))).isEmpty();
    }

    @Test
    void theFirstMeasurementSaysWhatIsHuntedAndWhatToDoNextInThePlayersLanguage() {
        model.begin(told -> noise(-45));
        take();

        HuntPicture picture = model.picture(Words.in(Locale.GERMAN)).orElseThrow();

        assertThat(picture.hunted()).isEqualTo(Part.HUM);
        assertThat(picture.noise()).extracting(HuntPicture.Bar::word).contains("Brummen");
        assertThat(picture.next()).isPresent();
    }

    @Test
    void aTrialIsKeptWithItsChange() {
        model.begin(told -> noise(-45));
        take();
        String trial = model.progress().flatMap(HuntProgress::next).orElseThrow();

        model.tried(told -> noise(-65));
        take();

        assertThat(model.progress().orElseThrow().steps()).singleElement().satisfies(step -> {
            assertThat(step.result().trial()).isEqualTo(trial);
            assertThat(step.result().changeDb()).isEqualTo(-20);
        });
    }

    @Test
    void whatCannotBeDoneHereIsNotAskedAgain() {
        model.begin(told -> noise(-45));
        take();
        String trial = model.progress().flatMap(HuntProgress::next).orElseThrow();

        model.skip();

        assertThat(model.progress().orElseThrow().next()).isNotEqualTo(java.util.Optional.of(trial));
        assertThat(model.progress().orElseThrow().steps()).isEmpty();
    }

    @Test
    void quietIsNothingToHunt() {
        model.begin(told -> noise(-110));
        take();

        assertThat(model.progress().orElseThrow().standing()).isEqualTo(HuntProgress.Standing.QUIET);
        model.tried(told -> noise(-20));
        assertThat(model.listening().isWaiting()).isFalse();
    }

    @Test
    void whatIsHeardSoFarIsThereWhileItIsListened() throws Exception {
        CountDownLatch told = new CountDownLatch(1);
        CountDownLatch goOn = new CountDownLatch(1);
        model.begin(so -> {
            so.accept(new NoiseSoFar(0.5, noise(-45)));
            told.countDown();
            goOn.await();
            return noise(-46);
        });
        told.await();

        assertThat(model.listening().isWaiting()).isTrue();
        assertThat(model.soFar().orElseThrow().parts()).isEqualTo(noise(-45));
        goOn.countDown();
        take();
        model.tried(so -> noise(-65));
        assertThat(model.soFar()).as("another measurement begins at nothing").isEmpty();
    }

    @Test
    void anotherTrialThanTheProposedOneCanBeMade() {
        model.begin(told -> noise(-45));
        take();
        HuntPicture.Task other = model.others(Words.in(Locale.ENGLISH)).get(2);

        model.choose(other.id());
        assertThat(model.task(Words.in(Locale.ENGLISH))).contains(other);
        model.tried(told -> noise(-46));
        take();

        assertThat(model.progress().orElseThrow().steps()).singleElement().satisfies(step -> assertThat(step.result().trial()).isEqualTo(other.id()));
        assertThat(model.others(Words.in(Locale.ENGLISH))).doesNotContain(other);
        assertThat(model.task(Words.in(Locale.ENGLISH))).isNotEqualTo(java.util.Optional.of(other));
    }

    @Test
    void aDisturbedMeasurementIsReplacedWhenItIsRepeated() {
        model.begin(told -> noise(-45));
        take();
        model.tried(told -> noise(-20));
        take();
        String trial = model.progress().orElseThrow().steps().get(0).result().trial();

        model.repeat(told -> noise(-60));
        take();

        assertThat(model.progress().orElseThrow().steps()).singleElement().satisfies(step -> {
            assertThat(step.result().trial()).isEqualTo(trial);
            assertThat(step.result().changeDb()).isEqualTo(-15);
        });
    }

    @Test
    void noTrialThatIsOfferedPartsAMainsEarth() {
        model.begin(told -> noise(-45));
        take();

        assertThat(model.others(Words.in(Locale.ENGLISH))).isNotEmpty().noneMatch(task -> EarthRefusal.isMeant(task.words()));
    }

    /** First order: after a time constant 63 % of the way is done, whatever the frame rate. */
    @Test
    void barsGlideToWhatIsMeasuredAtAnyFrameRateAndArrive() {
        NoiseBars from = bars(-40);
        NoiseBars to = bars(-60);
        NoiseBars slow = from.towards(to, 1.0 / 9);
        NoiseBars quick = from;
        for (int i = 0; i < 10; i++) {
            quick = quick.towards(to, 1.0 / 90);
        }

        assertThat(slow.before().get(0).levelDbfs()).isCloseTo(-40 - 20 * (1 - Math.exp(-1)), within(1e-9));
        assertThat(quick.before().get(0).levelDbfs()).isCloseTo(slow.before().get(0).levelDbfs(), within(1e-9));
        NoiseBars late = from;
        for (int i = 0; i < 120; i++) {
            late = late.towards(to, 1.0 / 60);
        }
        assertThat(late).isEqualTo(to);
    }

    private static NoiseBars bars(double humDbfs) {
        return new NoiseBars(HuntPicture.bars(noise(humDbfs), Sentences.english()), java.util.List.of(), false);
    }

    private void take() {
        while (model.listening().isWaiting()) {
            LockSupport.parkNanos(2_000_000);
        }
        model.take(model.listening().answer().value().orElseThrow());
    }

    private static NoiseParts noise(double humDbfs) {
        return new NoiseParts(Map.of(Part.HUM, humDbfs, Part.BUZZ, -100.0, Part.HISS, -100.0, Part.TONE, -110.0),
            Map.of(Part.HUM, 0.6, Part.BUZZ, 0.8, Part.HISS, 0.3, Part.TONE, 1.5));
    }
}
