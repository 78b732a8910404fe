package evenwood.ui.screen;

import com.sun.management.OperatingSystemMXBean;
import evenwood.rig.Presets;
import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.SoundChoice;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadInfo;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.CountDownLatch;
import javafx.animation.AnimationTimer;
import javafx.application.Platform;
import javafx.stage.Stage;

/**
 * How evenly the window draws while the demo is played live on the play page, and what it costs: frames a second, the longest
 * frame, processor time by part, frames of sound lost. Prints a table. Needs a display; software rendering with
 * {@code -Dprism.order=sw}.
 */
public final class FrameRun {
    private static final double WARM_UP_SECONDS = 10;
    private static final double NANOS = 1e9;

    private FrameRun() { }

    public static void main(String[] args) throws IOException, InterruptedException {
        double seconds = args.length == 0 ? 60 : Double.parseDouble(args[0]);
        CountDownLatch up = new CountDownLatch(1);
        Platform.startup(up::countDown);
        up.await();
        Path scratch = Files.createTempDirectory("frames");
        Counter counter = new Counter(seconds, scratch);
        Platform.runLater(counter::begin);
        counter.over.await();
        counter.print();
        System.exit(0);
    }

    static long processor() {
        return ((OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean()).getProcessCpuTime();
    }

    /** Processor time of threads whose name begins so. */
    static double threads(String names) {
        var bean = ManagementFactory.getThreadMXBean();
        double sum = 0;
        for (long id : bean.getAllThreadIds()) {
            ThreadInfo info = bean.getThreadInfo(id);
            if (info != null && info.getThreadName().matches("(" + names + ").*")) {
                sum += bean.getThreadCpuTime(id) / NANOS;
            }
        }
        return sum;
    }

    private static final class Counter {
        private final CountDownLatch over = new CountDownLatch(1);
        private final double seconds;
        private final CurrentTake take;
        private final RigModel rig;
        private final Choices choices;
        private final long[] frames = new long[200_000];
        private int count;
        private long first;
        private long startCpu;
        private long endCpu;
        private double ownSeconds;
        private double measureSeconds;
        private double startOwn;
        private double startMeasure;
        private boolean measuring;

        Counter(double seconds, Path scratch) {
            this.seconds = seconds;
            choices = new Choices(scratch.resolve("window.properties"));
            choices.put("language", "en");
            rig = new RigModel(new Presets(scratch), choices);
            take = new CurrentTake(rig::inUse);
        }

        void begin() {
            Shell shell = new Shell(new Stage(), take, rig, choices);
            shell.show();
            take.start(new SoundChoice.DemoPlayed());
            take.askDemo(java.util.Optional.of(evenwood.coach.GuidedCheck.Step.PLAY));
            shell.open("play");
            new AnimationTimer() {
                @Override
                public void handle(long nanos) {
                    frame(nanos, this);
                }
            }.start();
        }

        private void frame(long nanos, AnimationTimer timer) {
            if (first == 0) {
                first = nanos;
            }
            double elapsed = (nanos - first) / NANOS;
            if (elapsed < WARM_UP_SECONDS) {
                return;
            }
            if (!measuring) {
                measuring = true;
                startCpu = processor();
                startOwn = threads("JavaFX|Quantum|Prism|Glass|Invoke");
                startMeasure = threads("evenwood-");
            }
            frames[count++] = nanos;
            if (elapsed > WARM_UP_SECONDS + seconds) {
                timer.stop();
                endCpu = processor();
                ownSeconds = threads("JavaFX|Quantum|Prism|Glass|Invoke") - startOwn;
                measureSeconds = threads("evenwood-") - startMeasure;
                over.countDown();
            }
        }

        void print() {
            double took = (frames[count - 1] - frames[0]) / NANOS;
            double[] gaps = new double[count - 1];
            for (int i = 1; i < count; i++) {
                gaps[i - 1] = (frames[i] - frames[i - 1]) / 1e6;
            }
            Arrays.sort(gaps);
            long late = Arrays.stream(gaps).filter(gap -> gap > 50).count();
            System.out.printf(Locale.ROOT, "| what | measured |%n|---|---|%n");
            row("frames a second", String.format(Locale.ROOT, "%.1f", (count - 1) / took));
            row("frame, median", String.format(Locale.ROOT, "%.1f ms", gaps[gaps.length / 2]));
            row("frame, 99 of 100", String.format(Locale.ROOT, "%.1f ms", gaps[(int) (gaps.length * 0.99)]));
            row("longest frame", String.format(Locale.ROOT, "%.1f ms", gaps[gaps.length - 1]));
            row("frames over 50 ms", Long.toString(late));
            row("processor, the screen's threads", String.format(Locale.ROOT, "%.1f %% of a core", 100 * ownSeconds / took));
            row("processor, measuring and advice", String.format(Locale.ROOT, "%.1f %% of a core", 100 * measureSeconds / took));
            row("processor, the whole program", String.format(Locale.ROOT, "%.1f %% of a core", 100 * (endCpu - startCpu) / NANOS / took));
            row("sound lost", take.now().state().map(state -> state.lostFrames() + " frames").orElse("?"));
        }

        private static void row(String what, String measured) {
            System.out.println("| " + what + " | " + measured + " |");
        }
    }
}
