package evenwood.ui.screen;

import evenwood.ui.model.Choices;
import evenwood.ui.model.CurrentTake;
import evenwood.ui.model.Now;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
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

/** Takes pictures of the window's pages in both themes, both languages, at 100 and 200 %. Thread: any but the screen's. */
final class WindowCamera {
    static final Path FOLDER = Path.of("target", "shots");
    private static final long PATIENCE_SECONDS = 600;

    private final Stage stage;
    private final Shell shell;
    private final CurrentTake take;
    private final Choices choices;
    private final String only;

    /** @param only how the names of the wanted pictures begin */
    WindowCamera(Stage stage, Shell shell, CurrentTake take, Choices choices, String only) {
        this.stage = stage;
        this.shell = shell;
        this.take = take;
        this.choices = choices;
        this.only = only;
    }

    void page(String id, String name) {
        shots(id, name, () -> { });
    }

    /** One page in every dress; what has begun goes on. */
    void shots(String id, String name, Runnable more) {
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

    /** A page's widgets can be found once they were laid out. */
    void fire(String button) {
        onScreen(() -> stage.getScene().snapshot(null));
        onScreen(() -> {
            ((Button) shell.scene().lookup(button)).fire();
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

    static void await(BooleanSupplier there) {
        long end = System.nanoTime() + PATIENCE_SECONDS * 1_000_000_000L;
        while (!there.getAsBoolean()) {
            if (System.nanoTime() > end) {
                throw new IllegalStateException("shots: what was waited for never came");
            }
            LockSupport.parkNanos(20_000_000);
        }
    }

    static <T> T onScreen(Callable<T> work) {
        FutureTask<T> task = new FutureTask<>(work);
        Platform.runLater(task);
        try {
            return task.get();
        } catch (InterruptedException | ExecutionException problem) {
            throw new IllegalStateException(problem);
        }
    }
}
