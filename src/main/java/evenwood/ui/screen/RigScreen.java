package evenwood.ui.screen;

import evenwood.rig.Setting;
import evenwood.ui.model.LearnModel;
import evenwood.ui.model.Now;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the player owns, and where its controls stand. */
final class RigScreen implements Screen {
    private static final double WIDE_EMS = 72;
    private final Surroundings around;
    private final FlowPane controls = new FlowPane();
    private final VBox board;
    private final LearnView learn;
    private final Region rig;
    private final VBox content;
    private final Region node;

    RigScreen(Surroundings around) {
        this.around = around;
        Words words = around.words();
        GridPane parts = new GridPane();
        parts.getStyleClass().add("form");
        int row = 0;
        for (RigModel.Part part : RigModel.Part.values()) {
            Node box = part == RigModel.Part.CONTROLS ? controlsChooser() : Choosers.part(around, part);
            line(parts, row++, words.say("rig.part." + part.name().toLowerCase(Locale.ROOT)), box);
        }
        line(parts, row, words.say("rig.part.tap"), Choosers.tap(around));
        controls.getStyleClass().add("controls");
        board = Parts.sheet(words.say("rig.controls"), Parts.text(words.say("rig.controls-words"), "quiet"), controls);
        learn = new LearnView(around, this::acted);
        VBox owned = Parts.sheet(words.say("rig.title"), Parts.text(words.say("rig.words"), "quiet"), parts);
        rig = new SideBySide(around.ink().em() * WIDE_EMS, List.of(owned, board), 42, 58).node();
        content = Parts.column(rig, learn.node());
        content.getStyleClass().add("page");
        node = Parts.scrolled(content);
        showControls();
    }

    @Override
    public String id() {
        return "rig";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) {
        learn.show(now);
        order();
    }

    @Override
    public void opened() {
        showControls();
        learn.layAnew();
        order();
    }

    private Node controlsChooser() {
        var box = Choosers.part(around, RigModel.Part.CONTROLS);
        box.valueProperty().addListener((is, was, id) -> otherControls());
        return box;
    }

    private void acted() {
        showControls();
        order();
    }

    /** While a control is learned, nothing stands above it. */
    private void order() {
        boolean first = around.learn().stage() != LearnModel.Stage.CHOOSE;
        if (first != (content.getChildren().get(0) == learn.node())) {
            content.getChildren().setAll(first ? List.of(learn.node(), rig) : List.of(rig, learn.node()));
        }
    }

    private void otherControls() {
        around.learn().cancel();
        showControls();
        learn.layAnew();
    }

    private static void line(GridPane form, int row, String name, Node box) {
        form.add(Parts.word(name), 0, row);
        form.add(box, 1, row);
        GridPane.setHgrow(box, Priority.ALWAYS);
    }

    private void showControls() {
        controls.getChildren().clear();
        if (around.rig().settings().isEmpty()) {
            controls.getChildren().add(Parts.text(around.words().say("rig.no-controls"), "quiet"));
        }
        for (Setting setting : around.rig().settings()) {
            controls.getChildren().add(new ControlView(around, setting).node());
        }
    }
}
