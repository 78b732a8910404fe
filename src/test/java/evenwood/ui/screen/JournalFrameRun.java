package evenwood.ui.screen;

import evenwood.bench.JournalBench;
import evenwood.rig.Presets;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.RigModel;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.stage.Stage;

/**
 * How fluid the journal page is with ten thousand takes: how long until the list is there, frames while it scrolls, and how long
 * after a typed letter what matches is there. Prints a table. Needs a display; software rendering with {@code -Dprism.order=sw}.
 */
public final class JournalFrameRun {
    private static final double NANOS = 1e9;
    private static final double WARM_UP_SECONDS = 3;
    private static final double SCROLL_SECONDS = 20;
    private static final String TYPED = "number 777";
    private static final int TYPED_TIMES = 3;
    private static final int ROWS_A_FRAME = 9;

    private final CountDownLatch over = new CountDownLatch(1);
    private final List<Double> frames = new ArrayList<>();
    private final List<Double> answers = new ArrayList<>();
    private final CurrentTake take;
    private final Shell shell;
    private final long opened;
    private double listSeconds = -1;
    private long began;
    private long last;
    private double screenBefore;
    private double screenSeconds;
    private double searchBefore;
    private double searchSeconds;
    private int row;
    private int typed;
    private long asked;

    private JournalFrameRun(Path scratch) {
        Choices choices = new Choices(scratch.resolve("window.properties"));
        choices.put("language", "en");
        choices.put("journal.file", JournalBench.FILE);
        RigModel rig = new RigModel(new Presets(scratch), choices);
        take = new CurrentTake(rig::inUse);
        shell = new Shell(new Stage(), take, rig, choices);
        shell.show();
        opened = System.nanoTime();
        shell.open("journal");
        new AnimationTimer() {
            @Override
            public void handle(long nanos) {
                frame(this);
            }
        }.start();
    }

    public static void main(String[] args) throws IOException, InterruptedException {
        JournalBench filled = new JournalBench();
        filled.tenThousandTakes();
        filled.away();
        CountDownLatch up = new CountDownLatch(1);
        Platform.startup(up::countDown);
        up.await();
        Path scratch = Files.createTempDirectory("frames");
        JournalFrameRun[] run = new JournalFrameRun[1];
        CountDownLatch there = new CountDownLatch(1);
        Platform.runLater(() -> {
            run[0] = new JournalFrameRun(scratch);
            there.countDown();
        });
        there.await();
        run[0].over.await();
        run[0].print();
        System.exit(0);
    }

    private void frame(AnimationTimer timer) {
        long now = System.nanoTime();
        ListView<?> list = (ListView<?>) shell.scene().lookup("#journal-list");
        if (listSeconds < 0) {
            if (list == null || list.getItems().isEmpty()) {
                return;
            }
            listSeconds = (now - opened) / NANOS;
            began = now;
        }
        double elapsed = (now - began) / NANOS;
        if (elapsed < WARM_UP_SECONDS + SCROLL_SECONDS) {
            screenSeconds = FrameRun.threads("JavaFX|Quantum|Prism|Glass|Invoke");
            if (frames.isEmpty()) {
                screenBefore = screenSeconds;
            }
            if (elapsed > WARM_UP_SECONDS && last > 0) {
                frames.add((now - last) / 1e6);
            }
            last = now;
            row = (row + ROWS_A_FRAME) % list.getItems().size();
            list.scrollTo(row);
        } else if (typed < TYPED_TIMES * TYPED.length()) {
            type(now);
        } else {
            timer.stop();
            over.countDown();
        }
    }

    /** A letter when the answer to the one before is there. */
    private void type(long now) {
        TextField field = (TextField) shell.scene().lookup("#journal-search");
        if (asked > 0 && shell.journal().found().isWaiting()) {
            return;
        }
        double all = FrameRun.processor() / NANOS;
        if (asked > 0) {
            searchSeconds += all - searchBefore;
            answers.add((now - asked) / 1e6);
            typed++;
        }
        searchBefore = all;
        asked = System.nanoTime();
        field.setText(TYPED.substring(0, typed % TYPED.length() + 1));
    }

    private void print() {
        double[] gaps = frames.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        double[] found = answers.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        System.out.printf(Locale.ROOT, "| what | measured |%n|---|---|%n");
        row("from opening the page until the list is there", "%.0f ms", 1000 * listSeconds);
        row("frames a second while it scrolls", "%.1f", 1000 / Arrays.stream(gaps).average().orElseThrow());
        row("frame, median", "%.1f ms", gaps[gaps.length / 2]);
        row("frame, 99 of 100", "%.1f ms", gaps[(int) (0.99 * gaps.length)]);
        row("longest frame", "%.1f ms", gaps[gaps.length - 1]);
        row("processor time of the screen's threads, a frame", "%.1f ms", 1000 * (screenSeconds - screenBefore) / gaps.length);
        row("from a letter until what matches is there, median", "%.0f ms", found[found.length / 2]);
        row("the same, longest", "%.0f ms", found[found.length - 1]);
        row("processor time of the whole program, a letter", "%.0f ms", 1000 * searchSeconds / found.length);
    }

    private static void row(String what, String format, double measured) {
        System.out.println("| " + what + " | " + String.format(Locale.ROOT, format, measured) + " |");
    }
}
