package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.coach.FaultChange;
import evenwood.rig.Presets;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.GuideModel;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.Now;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.FutureTask;
import javafx.application.Platform;
import javafx.event.EventType;
import javafx.geometry.Point2D;
import javafx.scene.Node;
import javafx.scene.control.ButtonBase;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseButton;
import javafx.scene.input.MouseEvent;
import javafx.stage.Stage;

/**
 * A real window steered from outside: each line that comes in is one thing a player does, each line that goes out is what the
 * window shows. {@code open PAGE}, {@code press ID}, {@code pick MENU ITEM}, {@code drag ID FROM TO}, {@code key ID CODE [shift]}, {@code size W H}, {@code close}, {@code end}.
 */
public final class WindowProbe {
    private final Stage stage = new Stage();
    private final CurrentTake take;
    private final RigModel rig;
    private final Shell shell;
    private String said = "";

    private WindowProbe(Path scratch) {
        Choices choices = new Choices(scratch.resolve("window.properties"));
        choices.put("language", "en");
        choices.put("journal.file", scratch.resolve("journal.db"));
        rig = new RigModel(new Presets(scratch), choices);
        rig.choose(RigModel.Part.INSTRUMENT, "steel-string-guitar");
        take = new CurrentTake(rig::inUse);
        shell = new Shell(stage, take, rig, choices);
        shell.show();
    }

    public static void main(String[] args) throws Exception {
        CountDownLatch up = new CountDownLatch(1);
        Platform.setImplicitExit(false);
        Platform.startup(up::countDown);
        up.await();
        WindowProbe probe = onScreen(() -> new WindowProbe(Path.of(args[0])));
        onScreen(() -> probe.stage.getScene().snapshot(null));
        System.out.println("open after " + (System.currentTimeMillis() - ManagementFactory.getRuntimeMXBean().getStartTime()) + " ms");
        Thread tell = new Thread(probe::tellAgainAndAgain, "tell");
        tell.setDaemon(true);
        tell.start();
        probe.obey();
        System.exit(0);
    }

    private void obey() throws Exception {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null && !line.equals("end"); line = lines.readLine()) {
                String[] words = line.split(" ", 2);
                String done = onScreen(() -> act(words[0], words.length > 1 ? words[1] : ""));
                System.out.println("did " + line + ": " + done);
                if (line.equals("close")) {
                    break;
                }
            }
        } catch (IOException over) {
            System.out.println("no more to do");
        }
        take.close();
    }

    private String act(String what, String argument) {
        switch (what) {
            case "open" -> shell.open(argument);
            case "press" -> {
                shell.scene().getRoot().applyCss();
                shell.scene().getRoot().layout();
                Node node = shell.scene().lookup("#" + argument);
                if (!(node instanceof ButtonBase button)) {
                    return "not there";
                }
                if (button.isDisabled()) {
                    return "disabled";
                }
                button.fire();
            }
            case "pick" -> {
                String[] item = argument.split(" ", 2);
                if (!(shell.scene().lookup("#" + item[0]) instanceof MenuButton menu)) {
                    return "not there";
                }
                menu.getItems().stream().filter(each -> each.getText().contains(item[1])).findFirst().orElseThrow().fire();
            }
            case "drag" -> {
                String[] way = argument.split(" ");
                drag(shell.scene().lookup("#" + way[0]), Double.parseDouble(way[1]), Double.parseDouble(way[2]));
            }
            case "key" -> {
                String[] key = argument.split(" ");
                Node node = shell.scene().lookup("#" + key[0]);
                node.requestFocus();
                KeyEvent.fireEvent(node, new KeyEvent(KeyEvent.KEY_PRESSED, "", "", KeyCode.valueOf(key[1]), key.length > 2, false, false, false));
            }
            case "close" -> stage.close();
            case "size" -> {
                String[] size = argument.split(" ");
                stage.setWidth(Double.parseDouble(size[0]));
                stage.setHeight(Double.parseDouble(size[1]));
            }
            case "measure" -> {
                var picture = shell.scene().snapshot(null);
                return (int) picture.getWidth() + " x " + (int) picture.getHeight();
            }
            default -> {
                return "unknown";
            }
        }
        return "done";
    }

    private void tellAgainAndAgain() {
        while (true) {
            String now = onScreen(this::state);
            if (!now.equals(said)) {
                said = now;
                System.out.println("shows " + now);
            }
            java.util.concurrent.locks.LockSupport.parkNanos(50_000_000);
        }
    }

    /** The headline, the guide's step, and the coach's words, as they stand. */
    private String state() {
        Now now = take.now();
        Label headline = (Label) shell.scene().lookup("#headline");
        GuideModel guide = shell.around().guide();
        boolean input = shell.scene().lookup("#listen-1") != null;
        return "headline=" + (headline == null ? "" : headline.getText()) + " | guide=" + (guide.isOver() ? "over" : guide.asked().map(step ->
            step.name().toLowerCase(Locale.ROOT)).orElse("idle")) + " | input=" + (input ? "there" : "none") + " | heard=" + heard(now)
            + " | listened=" + now.readings().map(readings -> (long) readings.take().durationSeconds()).orElse(0L) / 5 * 5 + " s | liked=" + take.liked().map(liked -> "take " + liked.number()).orElse("none") + " | chosen=" + shell.journal().chosen().opened().answer().value()
                .map(opened -> "take " + opened.take().line().id()).orElse("none") + " | chain=" + rig.wiring().boxes().stream().map(plugged -> plugged.box().id()).toList() + " | hunt=" + hunt() + " | said=" + now.assessment().map(WindowProbe::said).orElse("");
    }

    /** With the mouse, from one part of its width to another, at half its height. */
    private static void drag(Node node, double from, double to) {
        double width = node.getLayoutBounds().getWidth();
        double y = Math.min(50, node.getLayoutBounds().getHeight() / 2);
        mouse(node, MouseEvent.MOUSE_PRESSED, from * width, y);
        for (int i = 1; i <= 10; i++) {
            mouse(node, MouseEvent.MOUSE_DRAGGED, (from + (to - from) * i / 10) * width, y);
        }
        mouse(node, MouseEvent.MOUSE_RELEASED, to * width, y);
    }

    private static void mouse(Node node, EventType<MouseEvent> kind, double x, double y) {
        Point2D at = node.localToScene(x, y);
        MouseEvent.fireEvent(node, new MouseEvent(kind, at.getX(), at.getY(), at.getX(), at.getY(), MouseButton.PRIMARY, 1, false, false, false, false, true, false, false, false, false, false, null));
    }

    /** How far a noise hunt is, what the newest trial did, and the likeliest cause. */
    private String hunt() {
        HuntModel hunt = shell.hunt();
        if (hunt.listening().isWaiting()) {
            return "listening, " + hunt.soFar().map(soFar -> Math.round(100 * soFar.done()) + " % heard").orElse("nothing heard yet");
        }
        return hunt.progress().map(progress -> progress.standing() + ", " + progress.steps().stream().map(step -> step.result().trial() + " "
            + step.result().outcome()).collect(java.util.stream.Collectors.joining(", ")) + ", suspected " + progress.hunt().ranking().get(0).cause())
            .orElse("none");
    }

    private static String heard(Now now) {
        return now.readings().isPresent() && now.readings().get().level().frames() > 0 ? "yes" : "no";
    }

    private static String said(Assessment assessment) {
        Words words = Words.in(Locale.ENGLISH);
        StringBuilder text = new StringBuilder(assessment.moves().size() + " moves;");
        assessment.verdict().findings().forEach(finding -> text.append(' ').append(words.fault(finding.fault())));
        assessment.comparison().ifPresent(comparison -> {
            for (FaultChange change : comparison.faults()) {
                text.append(' ').append(change.fault().id()).append('=').append(change.change().id());
            }
        });
        return text.toString();
    }

    private static <T> T onScreen(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        try {
            return task.get();
        } catch (Exception problem) {
            throw new IllegalStateException(problem);
        }
    }
}
