package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.report.HuntPicture;
import evenwood.rig.HuntTable.Part;
import evenwood.rig.Presets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
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
        model.begin(() -> noise(-45));
        take();

        HuntPicture picture = model.picture(Words.in(Locale.GERMAN)).orElseThrow();

        assertThat(picture.hunted()).isEqualTo(Part.HUM);
        assertThat(picture.noise()).extracting(HuntPicture.Bar::word).contains("Brummen");
        assertThat(picture.next()).isPresent();
    }

    @Test
    void aTrialIsKeptWithItsChange() {
        model.begin(() -> noise(-45));
        take();
        String trial = model.progress().flatMap(HuntProgress::next).orElseThrow();

        model.tried(() -> noise(-65));
        take();

        assertThat(model.progress().orElseThrow().steps()).singleElement().satisfies(step -> {
            assertThat(step.result().trial()).isEqualTo(trial);
            assertThat(step.result().changeDb()).isEqualTo(-20);
        });
    }

    @Test
    void whatCannotBeDoneHereIsNotAskedAgain() {
        model.begin(() -> noise(-45));
        take();
        String trial = model.progress().flatMap(HuntProgress::next).orElseThrow();

        model.skip();

        assertThat(model.progress().orElseThrow().next()).isNotEqualTo(java.util.Optional.of(trial));
        assertThat(model.progress().orElseThrow().steps()).isEmpty();
    }

    @Test
    void quietIsNothingToHunt() {
        model.begin(() -> noise(-110));
        take();

        assertThat(model.progress().orElseThrow().standing()).isEqualTo(HuntProgress.Standing.QUIET);
        model.tried(() -> noise(-20));
        assertThat(model.listening().isWaiting()).isFalse();
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
