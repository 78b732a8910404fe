package evenwood.ui.screen;

import evenwood.rig.Setting;
import evenwood.ui.model.LearnModel;
import evenwood.ui.model.Now;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What the player owns, and where its controls stand. */
final class RigScreen implements Screen {
    private static final double WIDE_EMS = 56;
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
        List<Region> fields = new ArrayList<>();
        for (RigModel.Part part : RigModel.Part.values()) {
            Region box = part == RigModel.Part.CONTROLS ? controlsChooser() : Choosers.part(around, part);
            fields.add(field(words.say("rig.part." + part.name().toLowerCase(Locale.ROOT)), box));
        }
        fields.add(field(words.say("rig.part.tap"), tapChooser()));
        int half = fields.size() / 2;
        Region parts = new SideBySide(around.ink().em() * WIDE_EMS, List.of(form(fields.subList(0, half)), form(fields.subList(half, fields.size()))), 50, 50).node();
        controls.getStyleClass().add("controls");
        board = Parts.sheet(words.say("rig.controls"), Parts.text(words.say("rig.controls-words"), "quiet"), controls);
        learn = new LearnView(around, this::acted);
        VBox owned = Parts.sheet(words.say("rig.title"), Parts.text(words.say("rig.words"), "quiet"), parts);
        rig = Parts.column(owned, board);
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

    private Region controlsChooser() {
        var box = Choosers.part(around, RigModel.Part.CONTROLS);
        box.valueProperty().addListener((is, was, id) -> otherControls());
        return box;
    }

    private Region tapChooser() {
        var box = Choosers.tap(around);
        box.valueProperty().addListener((is, was, tap) -> otherControls());
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

    private static Region field(String name, Region box) {
        VBox field = new VBox(Parts.text(name, "quiet"), box);
        field.getStyleClass().add("field");
        return field;
    }

    private static Region form(List<Region> fields) {
        VBox form = new VBox(fields.toArray(Node[]::new));
        form.getStyleClass().add("fields");
        return form;
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
