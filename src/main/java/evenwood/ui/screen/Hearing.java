package evenwood.ui.screen;

import evenwood.coach.Move;
import evenwood.ui.model.Audible;
import evenwood.ui.model.Problem;
import java.util.List;
import javafx.application.Platform;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;

/** The take played with a move, switched against without it while it plays. */
final class Hearing {
    private final Surroundings around;
    private final Label words = Parts.text("", "quiet");
    private final Button swap;
    private final HBox node;
    private Audible playing;

    Hearing(Surroundings around) {
        this.around = around;
        swap = Parts.button("hear-swap", around.words().say("hear.without"), this::swap, "small");
        Button stop = Parts.button("hear-stop", around.words().say("hear.stop"), this::stop, "small", "flat");
        node = Parts.row(words, Parts.space(), swap, stop);
        HBox.setHgrow(words, javafx.scene.layout.Priority.ALWAYS);
        show(false);
    }

    Region node() {
        return node;
    }

    void play(List<Move> moves) {
        stop();
        around.take().soundAgain().ifPresent(first -> {
            first.close();
            show(true);
            say("hear.preparing");
            playing = new Audible(() -> around.take().soundAgain().orElseThrow(), moves, () -> Platform.runLater(this::ended),
                problem -> Platform.runLater(() -> failed(problem)), () -> Platform.runLater(() -> say("hear.with")));
            playing.start();
        });
    }

    void stop() {
        if (playing != null) {
            playing.close();
            playing = null;
        }
        show(false);
    }

    private void swap() {
        if (playing != null) {
            boolean moved = playing.toggle();
            say(moved ? "hear.with" : "hear.without-now");
            swap.setText(around.words().say(moved ? "hear.without" : "hear.with-again"));
        }
    }

    private void ended() {
        stop();
    }

    private void failed(Problem problem) {
        stop();
        show(true);
        words.setText(around.words().say("headline.problem", problem));
    }

    private void say(String key) {
        words.setText(around.words().say(key));
    }

    private void show(boolean visible) {
        node.setVisible(visible);
        node.setManaged(visible);
    }
}
