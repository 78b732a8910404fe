package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.rig.PresetKind;
import evenwood.ui.model.AskModel;
import evenwood.ui.model.ChainPicture;
import evenwood.ui.model.Now;
import evenwood.ui.model.ResponsePicture;
import evenwood.ui.model.Scenario;
import evenwood.ui.model.WiringModel;
import evenwood.ui.model.Words;
import evenwood.ui.paint.TonePainter;
import java.util.List;
import java.util.Optional;
import javafx.scene.control.Label;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** How the instrument is plugged in: what fits, what does not, and what that does to the sound. */
final class WiringScreen implements Screen, ChainView.Told {
    private static final double WIDE_EMS = 66;

    private final Surroundings around;
    private final Words words;
    private final WiringModel wiring;
    private final ChainView view;
    private final WiringDetails details;
    private final AdviceView advice;
    private final Label whole = Parts.text("", "verdict");
    private final Label assumed;
    private final VBox chosen = Parts.sheet("");
    private final Board response;
    private final VBox heard = Parts.column();
    private final TonePainter tonePainter;
    private final VBox content = new VBox();
    private final VBox chainSheet;
    private final VBox responseSheet;
    private final ScrollPane node;
    private ChainPicture picture;
    private Optional<Assessment> shown = Optional.empty();
    private int joint;
    private int box = -1;
    private boolean asking;
    private Boolean wide;

    WiringScreen(Surroundings around) {
        this.around = around;
        words = around.words();
        double em = around.ink().em();
        wiring = around.rig().wiring();
        view = new ChainView(around, this);
        details = new WiringDetails(around, this::changed);
        advice = new AdviceView(around, this::changed);
        assumed = Parts.text(words.say("wiring.assumed"), "quiet");
        response = new Board(em * 20, em * 15);
        tonePainter = new TonePainter(around.ink(), words::frequency);
        chainSheet = Parts.sheet(words.say("wiring.title"), whole, view.node(), buttons(), assumed);
        responseSheet = Parts.sheet(words.say("wiring.response"), response, heard);
        content.getStyleClass().add("page");
        content.setMinWidth(0);
        node = Parts.scrolled(content);
        node.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() > em * WIDE_EMS));
        arrange(true);
    }

    @Override
    public String id() {
        return "wiring";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) {
        if (picture != null && !now.assessment().equals(shown)) {
            shown = now.assessment();
            showResponse();
        }
    }

    @Override
    public void opened() {
        shown = around.take().now().assessment();
        read();
        advice.opened();
    }

    @Override
    public void closed() {
        advice.closed();
    }

    private FlowPane buttons() {
        MenuButton scenarios = new MenuButton(words.say("wiring.scenarios"));
        scenarios.setId("wiring-scenarios");
        for (Scenario scenario : Scenario.values()) {
            MenuItem item = new MenuItem(words.say("wiring.scenario." + scenario.id()));
            item.setOnAction(event -> {
                wiring.take(scenario);
                changed();
            });
            scenarios.getItems().add(item);
        }
        MenuButton add = new MenuButton(words.say("wiring.add"));
        add.setId("wiring-add");
        for (String id : wiring.ids(PresetKind.BOXES)) {
            MenuItem item = new MenuItem(words.sayOr("preset.boxes." + id, wiring.presets().box(id).name()));
            item.setOnAction(event -> {
                box = wiring.add(id);
                changed();
            });
            add.getItems().add(item);
        }
        FlowPane row = new FlowPane(Parts.button("wiring-ask", words.say("wiring.ask"), this::ask, "accent"), scenarios, add);
        row.getStyleClass().add("buttons");
        return row;
    }

    /** Begins with the questions. */
    void ask() {
        AskModel questions = new AskModel(around.rig());
        AskView asked = new AskView(around, questions, () -> {
            asking = false;
            if (questions.question().isEmpty()) {
                wiring.takeRig(questions.rig());
            }
            wide = null;
            arrange(node.getWidth() > around.ink().em() * WIDE_EMS);
            box = -1;
            changed();
        });
        asking = true;
        content.getChildren().setAll(asked.node());
    }

    /** The chain is another one now. */
    private void changed() {
        joint = box >= 0 ? 0 : -1;
        around.take().judgeAgain();
        read();
    }

    private void read() {
        double lowestHz = wiring.presets().instrument(around.rig().chosen(evenwood.ui.model.RigModel.Part.INSTRUMENT)).lowestHz();
        picture = ChainPicture.of(wiring.connection(), lowestHz, words);
        whole.setText(picture.verdict());
        boolean guessed = wiring.said().isEmpty();
        assumed.setVisible(guessed);
        assumed.setManaged(guessed);
        if (box >= wiring.boxes().size()) {
            box = -1;
        }
        if (box < 0 && (joint < 1 || joint > picture.joints())) {
            joint = picture.firstToRead();
        }
        advice.show(picture);
        choose();
        showResponse();
    }

    private void choose() {
        if (box >= 0) {
            chosen.getChildren().setAll(details.box(box, () -> move(box, -1), () -> move(box, 1), () -> {
                wiring.remove(box);
                box = -1;
                changed();
            }));
        } else {
            chosen.getChildren().setAll(details.joint(picture, joint));
        }
        showChain();
    }

    private void showChain() {
        String saying = picture.verdict() + " " + (box >= 0 ? picture.ways().get(0).things().get(box + 1).name() : joint < 1 ? ""
            : picture.title(joint, words) + " " + picture.said(joint, words).stream().map(ChainPicture.Say::evidence).collect(java.util.stream.Collectors.joining(" ")));
        view.show(picture, joint, box, saying);
    }

    @Override
    public void joint(int number) {
        joint = number;
        box = -1;
        choose();
    }

    @Override
    public void box(int place) {
        box = place;
        joint = 0;
        choose();
    }

    @Override
    public void end(ChainPicture.Kind kind) {
        box = -1;
        joint = 0;
        chosen.getChildren().setAll(kind == ChainPicture.Kind.PICKUP ? details.pickup() : details.input());
        showChain();
    }

    @Override
    public void move(int place, int by) {
        box = wiring.move(place, by);
        changed();
    }

    private void showResponse() {
        ResponsePicture curve = ResponsePicture.of(picture.report(), shown, words);
        response.saying(String.join(" ", curve.words()));
        response.paint((g, width, height) -> tonePainter.paint(g, width, height, curve.curves()));
        heard.getChildren().setAll(curve.words().stream().map(line -> Parts.text(line, line.equals(curve.words().get(0)) ? "quiet" : "label")).toList());
    }

    private void arrange(boolean nowWide) {
        // A window that is made narrower while questions are asked must not lose them.
        if (asking || wide != null && wide == nowWide) {
            return;
        }
        wide = nowWide;
        content.getChildren().clear();
        VBox left = Parts.column(chosen, advice.node());
        if (nowWide) {
            GridPane row = new GridPane();
            row.getStyleClass().add("halves");
            row.add(left, 0, 0);
            row.add(responseSheet, 1, 0);
            for (int i = 0; i < 2; i++) {
                javafx.scene.layout.ColumnConstraints half = new javafx.scene.layout.ColumnConstraints();
                half.setPercentWidth(50);
                row.getColumnConstraints().add(half);
            }
            GridPane.setValignment(responseSheet, javafx.geometry.VPos.TOP);
            responseSheet.setMaxHeight(Region.USE_PREF_SIZE);
            content.getChildren().addAll(chainSheet, row);
        } else {
            content.getChildren().addAll(chainSheet, left, responseSheet);
        }
    }
}
