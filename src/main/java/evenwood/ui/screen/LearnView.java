package evenwood.ui.screen;

import evenwood.coach.GuidedCheck;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import evenwood.ui.model.LearnModel;
import evenwood.ui.model.LearnPicture;
import evenwood.ui.model.LearnedPicture;
import evenwood.ui.model.LevelPicture;
import evenwood.ui.model.Now;
import evenwood.ui.model.PlayedSource;
import evenwood.ui.model.SoundChoice;
import evenwood.ui.model.Words;
import evenwood.ui.paint.LearnedPainter;
import evenwood.ui.paint.LevelBarPainter;
import evenwood.ui.paint.StepPainter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Learning what a control really does: set it, play, set it otherwise, play; then its curve beside its marking. */
final class LearnView {
    private final Surroundings around;
    private final LearnModel model;
    private final Words words;
    private final Runnable turned;
    private final Board steps;
    private final Board level;
    private final Label asking = Parts.text("", "asking");
    private final Label levelWords = Parts.word("", "level-words");
    private final VBox node;
    private final StepPainter stepPainter;
    private final LevelBarPainter barPainter;
    private LearnPicture laid;

    /** @param turned told when a control was set or learned */
    LearnView(Surroundings around, Runnable turned) {
        this.around = around;
        this.turned = turned;
        model = around.learn();
        words = around.words();
        double em = around.ink().em();
        stepPainter = new StepPainter(around.ink());
        barPainter = new LevelBarPainter(around.ink());
        steps = new Board(em * 20, em * 8.5);
        level = new Board(em * 12, em * 2);
        HBox.setHgrow(level, Priority.ALWAYS);
        node = Parts.sheet("");
        node.setId("learn");
        layAnew();
    }

    Region node() {
        return node;
    }

    void show(Now now) {
        LearnPicture picture = model.picture(words);
        if (!alike(picture, laid)) {
            lay(picture);
        }
        if (picture.stage() == LearnModel.Stage.HEAR) {
            hearing(picture, LevelPicture.of(now, words));
        }
    }

    /** Everything but what fills while it is heard. */
    private static boolean alike(LearnPicture one, LearnPicture other) {
        return other != null && one.stage() == other.stage() && one.note().equals(other.note()) && one.set().equals(other.set())
            && (one.stage() == LearnModel.Stage.HEAR || one.asking().equals(other.asking()));
    }

    /** The rig's controls are others. */
    void layAnew() {
        lay(model.picture(words));
    }

    private void lay(LearnPicture picture) {
        boolean moved = laid != null && laid.stage() != picture.stage();
        laid = picture;
        node.setVisible(!around.rig().settings().isEmpty());
        node.setManaged(node.isVisible());
        List<Node> parts = new ArrayList<>(List.of(Parts.text(words.say("learn.title"), "sheet-title")));
        switch (picture.stage()) {
            case CHOOSE -> parts.addAll(choosing(picture));
            case SET -> parts.addAll(setting(picture));
            case HEAR, WORK -> parts.addAll(waiting(picture));
            case SHOW -> parts.addAll(learned(picture));
        }
        if (!picture.note().isEmpty()) {
            parts.add(1, Parts.text(picture.note(), "finding-title"));
        }
        node.getChildren().setAll(parts);
        steps.paint((g, width, height) -> stepPainter.paint(g, width, height, picture.steps(), picture.set().isPresent() || picture.stage() == LearnModel.Stage.HEAR));
        if (moved) {
            turned.run();
        }
    }

    private void hearing(LearnPicture picture, LevelPicture loud) {
        asking.setText(picture.asking());
        steps.saying(picture.asking());
        steps.paint(picture.steps(), picture.asking(), (g, width, height) -> stepPainter.paint(g, width, height, picture.steps(), true));
        level.paint((g, width, height) -> barPainter.paint(g, width, height, loud.peakDbtp()));
        levelWords.setText(loud.peakText());
    }

    private List<Node> choosing(LearnPicture picture) {
        ComboBox<Control> control = new ComboBox<>();
        control.setId("learn-control");
        control.getItems().setAll(model.controls());
        control.setConverter(Choosers.words(Control::name));
        control.getSelectionModel().selectFirst();
        control.setAccessibleText(words.say("learn.control"));
        Button begin = Parts.button("learn-begin", words.say("learn.begin"), () -> act(() -> model.begin(control.getValue())), "accent");
        List<Node> parts = new ArrayList<>(List.of(Parts.text(picture.asking(), "quiet")));
        if (!control.getItems().isEmpty()) {
            parts.add(Parts.row(Parts.word(words.say("learn.control")), control, begin));
        }
        around.rig().learned().forEach(known -> parts.add(known(known)));
        return parts;
    }

    private Node known(LearnedControl known) {
        String key = known.how() == LearnedControl.How.SWEEP ? "learn.learned-sweep" : "learn.learned-playing";
        return Parts.row(Parts.word(words.say(key, known.control())), Parts.button("learn-show", words.say("learn.show"), () -> act(() -> model.show(known)), "small", "flat"),
            Parts.button("learn-forget", words.say("learn.forget"), () -> act(() -> forget(known)), "small", "flat"));
    }

    private void forget(LearnedControl known) {
        around.rig().forget(known.control());
        around.take().judgeAgain();
    }

    private List<Node> setting(LearnPicture picture) {
        asking.setText(picture.asking());
        VBox said = Parts.column(asking, Parts.text(words.say("guide.listening", PlayedSource.name(source(), words)), "quiet"));
        if (picture.louder()) {
            said.getChildren().add(1, Parts.text(words.say("learn.caution"), "cure"));
        }
        Parts.grow(said);
        HBox middle = Parts.row(said);
        picture.set().ifPresent(setting -> middle.getChildren().add(0, new ControlView(around, setting, this::ask).node()));
        List<Button> buttons = new ArrayList<>();
        if (picture.set().isPresent()) {
            buttons.add(Parts.button("learn-listen", words.say("learn.listen"), this::listen, "accent"));
        }
        if (model.isEnough()) {
            buttons.add(Parts.button("learn-enough", words.say("learn.enough"), () -> act(model::learn)));
        }
        if (model.canRedo()) {
            buttons.add(Parts.button("learn-redo", words.say("learn.redo-last"), () -> act(model::redo)));
        }
        buttons.add(cancel());
        return List.of(steps, middle, buttons(buttons));
    }

    private List<Node> waiting(LearnPicture picture) {
        asking.setText(picture.asking());
        if (picture.stage() == LearnModel.Stage.WORK) {
            return List.of(steps, asking);
        }
        return List.of(steps, asking, Parts.row(level, levelWords), buttons(List.of(Parts.button("learn-redo", words.say("learn.redo"), () -> act(() -> {
            around.take().stop();
            model.redo();
        })), cancel())));
    }

    private List<Node> learned(LearnPicture picture) {
        LearnedPicture learned = picture.curves().orElseThrow();
        Board board = new Board(around.ink().em() * 20, around.ink().em() * 18);
        LearnedPainter painter = new LearnedPainter(around.ink(), words::frequency);
        board.saying(String.join(" ", learned.words()));
        board.paint((g, width, height) -> painter.paint(g, width, height, learned));
        List<Node> parts = new ArrayList<>();
        VBox said = Parts.column();
        learned.words().forEach(line -> said.getChildren().add(Parts.text(line)));
        if (!picture.stands().isEmpty()) {
            said.getChildren().add(Parts.text(picture.stands(), "cure"));
        }
        parts.add(said);
        parts.add(board);
        parts.add(Parts.text(words.say("learn.curve"), "quiet"));
        parts.add(buttons(List.of(Parts.button("learn-close", words.say("learn.close"), () -> act(model::cancel), "accent"))));
        return parts;
    }

    private Button cancel() {
        return Parts.button("learn-cancel", words.say("learn.cancel"), () -> act(() -> {
            if (model.stage() == LearnModel.Stage.HEAR) {
                around.take().stop();
            }
            model.cancel();
        }), "flat");
    }

    private static FlowPane buttons(List<Button> buttons) {
        FlowPane pane = new FlowPane(buttons.toArray(Node[]::new));
        pane.getStyleClass().add("buttons");
        return pane;
    }

    private SoundChoice source() {
        return PlayedSource.of(around.take().now(), around.choices());
    }

    private void ask(Setting other) {
        model.ask(other);
        laid = model.picture(words);
        asking.setText(laid.asking());
    }

    private void listen() {
        SoundChoice source = source();
        boolean demo = source instanceof SoundChoice.DemoPlayed;
        around.guide().leave();
        around.take().askDemo(Optional.of(GuidedCheck.Step.PLAY));
        act(() -> model.listen(around.take().start(source, model.demoControls()), demo));
    }

    private void act(Runnable verb) {
        verb.run();
        laid = null;
        layAnew();
        turned.run();
        Node main = node.lookup(".accent");
        if (main != null) {
            main.requestFocus();
        }
    }
}
