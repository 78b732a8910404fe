package evenwood.ui.screen;

import evenwood.coach.GuidedCheck;
import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.live.NoiseSoFar;
import evenwood.rig.HuntTable;
import evenwood.rig.PluggedBox;
import evenwood.rig.Setting;
import evenwood.rig.Presets;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.LearnModel;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Scenario;
import evenwood.ui.model.SoundChoice;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * Renders every page with the demo take's readings, in both themes, both languages, at 100 and 200 %, to {@code target/shots}.
 * Needs a display ({@code xvfb-run -a mvn -q -Pshots verify}).
 */
public final class ShotsRun {
    private static final double PACE = 10;

    private final Choices choices;
    private final CurrentTake take;
    private final RigModel rig;
    private final Shell shell;
    private final WindowCamera camera;

    private ShotsRun(Stage stage, Path scratch, String only) {
        choices = new Choices(scratch.resolve("window.properties"));
        choices.put("language", "en");
        choices.put("journal.file", scratch.resolve("journal.db"));
        rig = new RigModel(new Presets(scratch), choices);
        take = new CurrentTake(rig::inUse, PACE);
        shell = new Shell(stage, take, rig, choices);
        camera = new WindowCamera(stage, shell, take, choices, only);
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (System.getenv().getOrDefault("DISPLAY", "").isBlank() && !System.getProperty("os.name").matches("(?i).*(win|mac).*")) {
            System.err.println("shots: a display is needed; run under xvfb-run -a");
            System.exit(2);
        }
        Files.createDirectories(WindowCamera.FOLDER);
        CountDownLatch up = new CountDownLatch(1);
        Platform.startup(up::countDown);
        up.await();
        Path scratch = Files.createTempDirectory("shots");
        ShotsRun run = WindowCamera.onScreen(() -> new ShotsRun(new Stage(), scratch, args.length == 0 ? "" : args[0]));
        WindowCamera.onScreen(() -> {
            run.shell.show();
            return null;
        });
        try {
            run.all();
        } catch (IllegalStateException problem) {
            problem.printStackTrace();
            System.exit(1);
        }
        System.exit(0);
    }

    private void all() {
        camera.page("source", "source");
        camera.page("play", "play-empty");
        camera.page("guide", "guide-start");
        wiring();
        hunt();
        start(new SoundChoice.DemoChecked());
        camera.page("play", "play-demo");
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        take.judgeAgain();
        WindowCamera.await(() -> take.now().assessment().isPresent() && take.now().assessment().get().moves().stream().anyMatch(move -> move.control().ownName().isPresent()));
        camera.page("play", "play-demo-rig");
        stand("stand");
        camera.page("rig", "rig");
        learn();
        rig.choose(RigModel.Part.CONTROLS, "channel-strip");
        camera.page("rig", "rig-strip");
        camera.page("wiring", "wiring-heard");
        new JournalShots(camera, shell, take, rig, choices).all();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        WindowCamera.onScreen(() -> {
            take.start(new SoundChoice.Recording(Path.of("no-such-take.wav"), 0));
            return null;
        });
        WindowCamera.await(() -> !take.now().problem().isEmpty());
        camera.page("play", "play-problem");
        guided();
    }

    private void wiring() {
        camera.page("wiring", "wiring-assumed");
        rig.wiring().take(Scenario.AMP_AND_MIXER);
        camera.shots("wiring", "wiring-box", () -> ((WiringScreen) shell.opened()).box(0));
        rig.wiring().take(Scenario.HEAD_AND_CABINET);
        camera.page("wiring", "wiring-head");
        camera.shots("wiring", "wiring-ask", () -> ((WiringScreen) shell.opened()).ask());
        rig.wiring().take(Scenario.STAGE);
        rig.wiring().set(0, PluggedBox.of(rig.wiring().presets().box("passive-di")));
    }

    private void learn() {
        WindowCamera.onScreen(() -> {
            shell.around().learn().begin(rig.settings().get(1).control());
            return null;
        });
        camera.page("rig", "learn-set");
        heard("learn-hear");
        heard("");
        heard("");
        WindowCamera.await(() -> shell.around().learn().stage() == LearnModel.Stage.SHOW);
        camera.page("rig", "learn-curve");
        WindowCamera.onScreen(() -> {
            shell.around().learn().cancel();
            rig.set(Setting.neutral(rig.settings().get(1).control()));
            return null;
        });
        start(new SoundChoice.DemoChecked());
    }

    /** One position; a picture of it half way, if that has a name. */
    private void heard(String name) {
        WindowCamera.onScreen(() -> {
            shell.open("rig");
            take.askDemo(Optional.of(GuidedCheck.Step.PLAY));
            shell.around().learn().listen(take.start(new SoundChoice.DemoPlayed(), shell.around().learn().demoControls()), true);
            return null;
        });
        if (!name.isEmpty()) {
            WindowCamera.await(() -> take.now().readings().filter(each -> each.take().durationSeconds() > 10).isPresent());
            camera.page("rig", name);
        }
        WindowCamera.await(() -> shell.around().learn().stage() != LearnModel.Stage.HEAR);
    }

    private void hunt() {
        camera.page("hunt", "hunt-begin");
        measured(() -> shell.hunt().begin(told -> noise(-47)));
        camera.page("hunt", "hunt-noise");
        measured(() -> shell.hunt().tried(told -> noise(-46.4)));
        camera.page("hunt", "hunt-step");
        CountDownLatch seen = new CountDownLatch(1);
        measured(() -> {
            shell.hunt().tried(told -> {
                told.accept(new NoiseSoFar(0.5, noise(-56)));
                seen.await();
                return noise(-63);
            });
            WindowCamera.await(() -> shell.hunt().soFar().isPresent());
            camera.page("hunt", "hunt-listening");
            seen.countDown();
        });
        for (int i = 0; i < 6 && shell.hunt().progress().flatMap(HuntProgress::next).isPresent(); i++) {
            double level = i % 2 == 0 ? -47 : -63;
            measured(() -> shell.hunt().tried(told -> noise(level)));
        }
        camera.page("hunt", "hunt-end");
    }

    private void measured(Runnable begin) {
        begin.run();
        WindowCamera.await(() -> !shell.hunt().listening().isWaiting());
        shell.hunt().take(shell.hunt().listening().answer().value().orElseThrow());
    }

    private static NoiseParts noise(double humDbfs) {
        return new NoiseParts(Map.of(HuntTable.Part.HUM, humDbfs, HuntTable.Part.BUZZ, humDbfs - 7, HuntTable.Part.HISS, -82.0, HuntTable.Part.TONE, -95.0),
            Map.of(HuntTable.Part.HUM, 0.6, HuntTable.Part.BUZZ, 0.8, HuntTable.Part.HISS, 0.3, HuntTable.Part.TONE, 1.5));
    }

    private void guided() {
        WindowCamera.onScreen(() -> {
            shell.open("guide");
            return null;
        });
        camera.fire("#guide-begin");
        WindowCamera.await(() -> take.now().readings().isPresent() && take.now().readings().get().take().durationSeconds() > 12);
        camera.page("guide", "guide-running");
        WindowCamera.await(() -> WindowCamera.onScreen(() -> shell.around().guide().isOver()));
        WindowCamera.await(() -> take.now().assessment().isPresent());
        camera.page("guide", "guide-outcome");
        camera.fire("#guide-begin");
        WindowCamera.await(() -> WindowCamera.onScreen(() -> shell.around().guide().isOver()));
        WindowCamera.await(() -> take.now().assessment().flatMap(evenwood.coach.Assessment::comparison).isPresent());
        camera.page("guide", "guide-again");
        camera.page("play", "play-again");
        start(new SoundChoice.DemoPlayed());
        WindowCamera.await(() -> take.now().readings().get().take().durationSeconds() > 30);
        camera.page("play", "play-live");
    }

    private void start(SoundChoice choice) {
        WindowCamera.onScreen(() -> {
            take.start(choice);
            return null;
        });
        WindowCamera.await(() -> take.now().assessment().isPresent());
    }

    private void stand(String name) {
        camera.shots("play", name, shell::toggleStand);
    }
}
