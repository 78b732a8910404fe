package evenwood.ui.screen;

import evenwood.coach.hunt.HuntProgress.Standing;
import evenwood.coach.hunt.NoiseParts;
import evenwood.judge.Statement;
import evenwood.report.HuntPicture;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.Now;
import evenwood.ui.model.Problem;
import evenwood.ui.model.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The noise hunt: one change at a time, bars before and after, the likeliest causes, in the end cause and cure. */
final class HuntScreen implements Screen {
    private final Surroundings around;
    private final Words words;
    private final HuntModel model;
    private final VBox step = Parts.sheet("");
    private final VBox ranking = Parts.sheet("");
    private final ProgressBar progress = new ProgressBar();
    private final HuntBars bars;
    private final VBox content;
    private final Region node;
    private final Watch<Later.Answer<NoiseParts>> watch;
    private boolean why;

    HuntScreen(Surroundings around) {
        this.around = around;
        words = around.words();
        model = around.hunt();
        bars = new HuntBars(around, progress);
        progress.setMinWidth(around.ink().em() * 12);
        content = Parts.column(step, bars.node(), ranking);
        content.getStyleClass().add("page");
        content.setMinWidth(0);
        node = Parts.scrolled(content);
        watch = new Watch<>(model.listening()::answer, this::heard);
        show();
    }

    @Override
    public String id() {
        return "hunt";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) {
        bars.hear(now);
    }

    @Override
    public void opened() {
        watch.start();
        bars.opened();
        show();
    }

    @Override
    public void closed() {
        watch.stop();
        bars.closed();
    }

    /** The input that is listened to now; a live take ends first, for many devices are heard by one only. */
    private HuntModel.Ear input() {
        Now now = around.take().now();
        if (now.isLive()) {
            around.take().stop();
        }
        return HuntModel.input(now);
    }

    private void heard(Later.Answer<NoiseParts> answer) {
        answer.value().ifPresent(model::take);
        show();
    }

    private void show() {
        Optional<HuntPicture> picture = model.picture(words);
        step.getChildren().setAll(step(picture));
        bars.show();
        boolean ranked = picture.filter(each -> each.standing() != Standing.QUIET).isPresent();
        ranking.setVisible(ranked);
        ranking.setManaged(ranked);
        picture.filter(each -> ranked).ifPresent(each -> HuntSteps.show(ranking, each, around));
    }

    private List<Node> step(Optional<HuntPicture> picture) {
        Optional<HuntPicture.Task> task = model.task(words);
        String asked = picture.isEmpty() ? sentence("hunt.begin") : task.map(each -> words.say("move.title", picture.get().steps().size() + 1,
            words.say("move.why", each.words()))).orElse(words.say("move.why", picture.get().conclusion()));
        List<Node> nodes = new ArrayList<>(List.of(Parts.text(words.say("hunt.title"), "sheet-title")));
        if (task.isPresent() && !picture.get().steps().isEmpty()) {
            nodes.add(Parts.text(sentence("hunt.back")));
        }
        nodes.add(Parts.text(asked, "asking"));
        picture.flatMap(HuntPicture::cure).ifPresent(cure -> nodes.add(Parts.text(words.say("move.why", cure), "cure")));
        if (picture.isPresent() && model.isUnsteady()) {
            nodes.add(Parts.text(sentence("hunt.unsteady"), "cure"));
        }
        Problem problem = model.listening().answer().problem();
        if (!problem.isEmpty()) {
            nodes.add(Parts.text(words.say("journal.problem", problem), "cure"));
        }
        if (picture.isEmpty()) {
            nodes.add(Parts.text(words.say("hunt.how"), "quiet"));
        }
        nodes.add(model.listening().isWaiting() ? listening() : buttons(picture.isPresent(), task.isPresent()));
        nodes.addAll(earth());
        return nodes;
    }

    private Node listening() {
        Node says = Parts.text(words.say("hunt.listening", HuntModel.SECONDS));
        HBox row = Parts.row(progress, says);
        HBox.setHgrow(says, Priority.ALWAYS);
        return row;
    }

    private Node buttons(boolean begun, boolean asked) {
        FlowPane row = new FlowPane();
        row.getStyleClass().add("buttons");
        if (asked) {
            row.getChildren().addAll(button("hunt-done", "hunt.done", () -> model.tried(input()), "accent"), button("hunt-skip", "hunt.skip", model::skip), others());
        }
        if (begun && model.isUnsteady()) {
            row.getChildren().add(button("hunt-repeat", "hunt.repeat", () -> model.repeat(input())));
        }
        row.getChildren().add(button("hunt-begin", begun ? "hunt.again" : "hunt.start", () -> model.begin(input()), begun ? "flat" : "accent"));
        return row;
    }

    private Node others() {
        MenuButton others = new MenuButton(words.say("hunt.others"));
        others.setId("hunt-others");
        others.getStyleClass().add("big-answer");
        for (HuntPicture.Task task : model.others(words)) {
            MenuItem item = new MenuItem(task.words());
            item.setOnAction(event -> {
                model.choose(task.id());
                show();
            });
            others.getItems().add(item);
        }
        others.setDisable(others.getItems().isEmpty());
        return others;
    }

    /** The one thing that is never tried, and why. */
    private List<Node> earth() {
        Node never = Parts.text(words.say("hunt.earth"), "quiet");
        Node question = Parts.button("hunt-why", words.say(why ? "hunt.why-less" : "hunt.why"), () -> {
            why = !why;
            show();
        }, "small");
        return why ? List.of(never, question, Parts.text(sentence("hunt.refused"), "cure")) : List.of(never, question);
    }

    private Button button(String id, String key, Runnable action, String... styles) {
        Button button = Parts.button(id, words.say(key), () -> {
            action.run();
            show();
        }, styles);
        button.getStyleClass().add("big-answer");
        return button;
    }

    private String sentence(String key) {
        return words.say("move.why", words.say(Statement.of(key)));
    }
}
