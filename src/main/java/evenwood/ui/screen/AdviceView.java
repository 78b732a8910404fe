package evenwood.ui.screen;

import evenwood.ui.model.ChainPicture;
import evenwood.ui.model.Later;
import evenwood.ui.model.WiringBetter;
import evenwood.ui.model.Words;
import java.util.Optional;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What would be better with what is at hand, and the one thing to buy first. Trying all ways takes its time. */
final class AdviceView {
    private final Words words;
    private final Surroundings around;
    private final Runnable changed;
    private final Later<WiringBetter> better = new Later<>("evenwood-wiring-advice");
    private final Watch<Later.Answer<WiringBetter>> watch = new Watch<>(better::answer, this::show);
    private final VBox node;

    /** @param changed another way was taken over */
    AdviceView(Surroundings around, Runnable changed) {
        this.around = around;
        this.changed = changed;
        words = around.words();
        node = Parts.sheet("");
        show(better.answer());
    }

    Region node() {
        return node;
    }

    /** From when the page is open. */
    void opened() {
        watch.start();
    }

    void closed() {
        watch.stop();
    }

    void show(ChainPicture picture) {
        better.ask(() -> WiringBetter.of(picture.report(), around.rig().wiring(), words));
    }

    private void show(Later.Answer<WiringBetter> answer) {
        node.getChildren().clear();
        answer.value().ifPresent(found -> {
            add(found.atHand(), "wiring.better");
            add(found.buyFirst(), "wiring.buy");
        });
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
}
