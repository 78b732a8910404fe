package evenwood.ui.screen;

import evenwood.ui.model.ChainPicture;
import evenwood.ui.model.WiringBetter;
import evenwood.ui.model.Words;
import java.util.Optional;
import javafx.application.Platform;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What would be better with what is at hand, and the one thing to buy first. Worked out beside the screen's thread. */
final class AdviceView {
    private final Words words;
    private final Surroundings around;
    private final Runnable changed;
    private final VBox node;
    private ChainPicture asked;

    /** @param changed another way was taken over */
    AdviceView(Surroundings around, Runnable changed) {
        this.around = around;
        this.changed = changed;
        words = around.words();
        node = Parts.sheet("");
        hide();
    }

    Region node() {
        return node;
    }

    void show(ChainPicture picture) {
        asked = picture;
        Thread work = new Thread(() -> {
            WiringBetter better = WiringBetter.of(picture.report(), around.rig().wiring(), words);
            Platform.runLater(() -> {
                if (asked == picture) {
                    show(better);
                }
            });
        }, "evenwood-wiring-advice");
        work.setDaemon(true);
        work.start();
    }

    private void show(WiringBetter better) {
        node.getChildren().clear();
        add(better.atHand(), "wiring.better");
        add(better.buyFirst(), "wiring.buy");
        node.setVisible(!node.getChildren().isEmpty());
        node.setManaged(!node.getChildren().isEmpty());
    }

    private void add(Optional<WiringBetter.Way> way, String key) {
        way.ifPresent(each -> node.getChildren().addAll(Parts.text(words.say(key, each.toBuy()), "sheet-title"), Parts.text(each.chain()),
            Parts.button(key.replace('.', '-'), words.say("wiring.take"), () -> {
                around.rig().wiring().take(each.connection());
                changed.run();
            }, "small")));
    }

    private void hide() {
        node.setVisible(false);
        node.setManaged(false);
    }
}
