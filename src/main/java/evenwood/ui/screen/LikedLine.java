package evenwood.ui.screen;

import evenwood.ui.model.LikedTake;
import evenwood.ui.model.Words;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;

/** Says on every page that what is played is held against a kept take, and lets go of it. */
final class LikedLine {
    private final Words words;
    private final Label says = Parts.text("");
    private final FlowPane node;

    LikedLine(Surroundings around) {
        words = around.words();
        node = new FlowPane(says, Parts.button("liked-let-go", words.say("recall.let-go"), () -> around.take().like(Optional.empty()), "small"));
        node.getStyleClass().addAll("buttons", "liked");
        Watch<Optional<LikedTake>> watch = new Watch<>(around.take()::liked, this::show);
        node.sceneProperty().addListener((is, was, scene) -> {
            if (scene == null) {
                watch.stop();
            } else {
                watch.start();
            }
        });
        show(Optional.empty());
    }

    Region node() {
        return node;
    }

    private void show(Optional<LikedTake> liked) {
        node.setVisible(liked.isPresent());
        node.setManaged(liked.isPresent());
        liked.ifPresent(take -> says.setText(words.say("recall.held-against", take.number())));
    }
}
