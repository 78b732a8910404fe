package evenwood.ui.screen;

import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.NoiseParts;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.Reading;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.rig.HuntTable;
import evenwood.rig.PluggedBox;
import evenwood.rig.Presets;
import evenwood.takes.ReadingsSketch;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.Now;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Scenario;
import evenwood.ui.model.SoundChoice;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.image.PixelFormat;
import javafx.scene.image.WritableImage;
import javafx.stage.Stage;
import javax.imageio.ImageIO;

/**
 * Renders every page with the demo take's readings, in both themes, both languages, at 100 and 200 %, to {@code target/shots}.
 * Needs a display ({@code xvfb-run -a mvn -q -Pshots verify}).
 */
public final class ShotsRun {
    private static final Path FOLDER = Path.of("target", "shots");
    private static final double PACE = 10;
    private static final long PATIENCE_SECONDS = 600;

    private final Choices choices;
    private final CurrentTake take;
    private final RigModel rig;
    private final Stage stage;
    private final Shell shell;
    private final String only;

    private ShotsRun(Stage stage, Path scratch, String only) {
        this.stage = stage;
        this.only = only;
        choices = new Choices(scratch.resolve("window.properties"));
        choices.put("language", "en");
        choices.put("journal.file", scratch.resolve("journal.db"));
        rig = new RigModel(new Presets(scratch), choices);
        take = new CurrentTake(rig::rig, PACE);
        shell = new Shell(stage, take, rig, choices);
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        if (System.getenv().getOrDefault("DISPLAY", "").isBlank() && !System.getProperty("os.name").matches("(?i).*(win|mac).*")) {
            System.err.println("shots: a display is needed; run under xvfb-run -a");
            System.exit(2);
        }
        Files.createDirectories(FOLDER);
        CountDownLatch up = new CountDownLatch(1);
        Platform.startup(up::countDown);
        up.await();
        Path scratch = Files.createTempDirectory("shots");
        ShotsRun run = onScreen(() -> new ShotsRun(new Stage(), scratch, args.length == 0 ? "" : args[0]));
        onScreen(() -> {
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
        page("source", "source");
        page("play", "play-empty");
        page("guide", "guide-start");
        wiring();
        hunt();
        start(new SoundChoice.DemoChecked());
        page("play", "play-demo");
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        take.judgeAgain();
        await(() -> take.now().assessment().isPresent() && take.now().assessment().get().moves().stream().anyMatch(move -> move.control().ownName().isPresent()));
        page("play", "play-demo-rig");
        stand("stand");
        page("rig", "rig");
        rig.choose(RigModel.Part.CONTROLS, "channel-strip");
        page("rig", "rig-strip");
        page("wiring", "wiring-heard");
        journal();
        rig.choose(RigModel.Part.CONTROLS, "amp-bass-mid-treble");
        onScreen(() -> {
            take.start(new SoundChoice.Recording(Path.of("no-such-take.wav"), 0));
            return null;
        });
        await(() -> !take.now().problem().isEmpty());
        page("play", "play-problem");
        guided();
    }

    private void wiring() {
        page("wiring", "wiring-assumed");
        rig.wiring().take(Scenario.AMP_AND_MIXER);
        shots("wiring", "wiring-box", () -> ((WiringScreen) shell.opened()).box(0));
        rig.wiring().take(Scenario.HEAD_AND_CABINET);
        page("wiring", "wiring-head");
        shots("wiring", "wiring-ask", () -> ((WiringScreen) shell.opened()).ask());
        rig.wiring().take(Scenario.STAGE);
        rig.wiring().set(0, PluggedBox.of(rig.wiring().presets().box("passive-di")));
    }

    private void hunt() {
        page("hunt", "hunt-begin");
        measured(() -> shell.hunt().begin(() -> noise(-47)));
        page("hunt", "hunt-noise");
        measured(() -> shell.hunt().tried(() -> noise(-46.4)));
        page("hunt", "hunt-step");
        for (int i = 0; i < 6 && shell.hunt().progress().flatMap(HuntProgress::next).isPresent(); i++) {
            double level = i % 2 == 0 ? -47 : -63;
            measured(() -> shell.hunt().tried(() -> noise(level)));
        }
        page("hunt", "hunt-end");
    }

    private void measured(Runnable begin) {
        begin.run();
        await(() -> !shell.hunt().listening().isWaiting());
        shell.hunt().take(shell.hunt().listening().answer().value().orElseThrow());
    }

    private static NoiseParts noise(double humDbfs) {
        return new NoiseParts(Map.of(HuntTable.Part.HUM, humDbfs, HuntTable.Part.BUZZ, humDbfs - 7, HuntTable.Part.HISS, -82.0, HuntTable.Part.TONE, -95.0),
            Map.of(HuntTable.Part.HUM, 0.6, HuntTable.Part.BUZZ, 0.8, HuntTable.Part.HISS, 0.3, HuntTable.Part.TONE, 1.5));
    }

    private void journal() {
        shots("journal", "journal-empty", this::answered);
        OffsetDateTime first = OffsetDateTime.parse("2026-01-10T20:15:00Z");
        SplittableRandom random = new SplittableRandom(1);
        long before;
        long after;
        try (Journal journal = Journal.open(Path.of(choices.get("journal.file", "")))) {
            for (int i = 0; i < 60; i++) {
                double hiss = -84 + random.nextGaussian() + (i < 38 ? 0 : 5);
                journal.keepNow(new TakeToKeep(first.plusDays(4L * i), KeptExamples.assessment(new ReadingsSketch().playing(50, -24 + random.nextGaussian())
                    .noise(hiss + 1, -90, -92, hiss)), Optional.empty(), new TakeWords("octave-mandolin", i % 3 == 0 ? "The Harp & Crown" : "", "", List.of())));
            }
            journal.addNow(new Event("1", first.plusDays(70), EventKind.NEW_STRINGS, "", ""));
            journal.addNow(new Event("2", first.plusDays(160), EventKind.NEW_CABLE, "", ""));
            TakeWords words = new TakeWords("octave-mandolin", "The Harp & Crown", "strings a week old", List.of("live"));
            before = journal.keepNow(new TakeToKeep(first.plusDays(244), KeptExamples.measured().assessment(), KeptExamples.measured().rig(), words));
            after = journal.keepNow(new TakeToKeep(first.plusDays(245), take.now().assessment().orElseThrow(), rig.rig(), words));
        }
        shell.journal().reading(Reading.HISS);
        shots("journal", "journal-list", this::answered);
        shell.journal().pick(before);
        shell.journal().pick(after);
        shots("journal", "journal-compare", this::answered);
    }

    /** What the journal page asked for is there and shown. */
    private void answered() {
        await(() -> !shell.journal().found().isWaiting() && !shell.journal().overTime().isWaiting() && !shell.journal().compared().isWaiting());
        ((JournalScreen) shell.opened()).look();
    }

    private void guided() {
        onScreen(() -> {
            shell.open("guide");
            return null;
        });
        fire("#guide-begin");
        await(() -> take.now().readings().isPresent() && take.now().readings().get().take().durationSeconds() > 20);
        page("play", "play-live");
        page("guide", "guide-running");
        await(() -> onScreen(() -> shell.guide().isOver()));
        await(() -> take.now().assessment().isPresent());
        page("guide", "guide-outcome");
        fire("#guide-begin");
        await(() -> onScreen(() -> shell.guide().isOver()));
        await(() -> take.now().assessment().flatMap(evenwood.coach.Assessment::comparison).isPresent());
        page("guide", "guide-again");
        page("play", "play-again");
    }

    /** A page's widgets can be found once they were laid out. */
    private void fire(String button) {
        onScreen(() -> stage.getScene().snapshot(null));
        onScreen(() -> {
            ((Button) shell.scene().lookup(button)).fire();
            return null;
        });
    }

    private void start(SoundChoice choice) {
        onScreen(() -> {
            take.start(choice);
            return null;
        });
        await(() -> take.now().assessment().isPresent());
    }

    private void page(String id, String name) {
        shots(id, name, () -> { });
    }

    private void stand(String name) {
        shots("play", name, shell::toggleStand);
    }

    /** One page in every dress; what has begun goes on. */
    private void shots(String id, String name, Runnable more) {
        if (!name.startsWith(only)) {
            return;
        }
        Now fixed = onScreen(() -> {
            shell.hold(true);
            return take.now();
        });
        for (String theme : List.of("light", "dark")) {
            for (String language : List.of("en", "de")) {
                for (double scale : new double[] {1, 2}) {
                    if (theme.equals("dark") && language.equals("de")) {
                        continue;
                    }
                    onScreen(() -> {
                        choices.put("theme", theme);
                        choices.put("language", language);
                        choices.put("text.scale", scale);
                        shell.dress(id);
                        more.run();
                        shell.present(fixed);
                        return null;
                    });
                    save(name + "-" + theme + "-" + language + "-" + Math.round(scale * 100));
                }
            }
        }
        onScreen(() -> {
            choices.put("theme", "light");
            choices.put("language", "en");
            choices.put("text.scale", 1);
            shell.hold(false);
            shell.dress(id);
            return null;
        });
    }

    private void save(String name) {
        // Twice: wrapped text finds its height in the first layout and its place in the second.
        onScreen(() -> stage.getScene().snapshot(null));
        WritableImage picture = onScreen(() -> stage.getScene().snapshot(null));
        int width = (int) picture.getWidth();
        int height = (int) picture.getHeight();
        int[] pixels = new int[width * height];
        picture.getPixelReader().getPixels(0, 0, width, height, PixelFormat.getIntArgbInstance(), pixels, 0, width);
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        image.setRGB(0, 0, width, height, pixels, 0, width);
        try {
            ImageIO.write(image, "png", FOLDER.resolve(name + ".png").toFile());
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
    }

    private static void await(BooleanSupplier there) {
        long end = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!there.getAsBoolean()) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("shots: what was waited for never came");
            }
            LockSupport.parkNanos(20_000_000);
        }
    }

    private static <T> T onScreen(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        try {
            return task.get();
        } catch (InterruptedException | ExecutionException problem) {
            throw new IllegalStateException(problem);
        }
    }
}
