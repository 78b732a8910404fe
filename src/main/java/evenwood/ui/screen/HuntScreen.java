package evenwood.ui.screen;

import evenwood.coach.hunt.HuntProgress.Standing;
import evenwood.coach.hunt.NoiseParts;
import evenwood.report.HuntPicture;
import evenwood.ui.model.HuntModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.Now;
import evenwood.ui.model.Words;
import evenwood.ui.paint.NoiseBarsPainter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The noise hunt: one change at a time, bars before and after, the likeliest causes, in the end cause and cure. */
final class HuntScreen implements Screen {
    private static final int MOST_CAUSES = 5;
    private static final double MOST_SAID = 0.99;
    private static final double LEAST_SHOWN = 0.01;

    private final Surroundings around;
    private final Words words;
    private final HuntModel model;
    private final VBox step = Parts.sheet("");
    private final VBox ranking = Parts.sheet("");
    private final VBox noise;
    private final Board bars;
    private final NoiseBarsPainter painter;
    private final VBox barWords = Parts.column();
    private final VBox content;
    private final Region node;
    private final Watch<Later.Answer<NoiseParts>> watch;

    HuntScreen(Surroundings around) {
        this.around = around;
        words = around.words();
        model = around.hunt();
        double em = around.ink().em();
        bars = new Board(em * 20, em * 19);
        painter = new NoiseBarsPainter(around.ink(), words.say("hunt.before"), words.say("hunt.after"), level -> words.say("number.with-unit", words.number(level, 0),
            words.say("unit.dbfs")));
        noise = Parts.sheet(words.say("hunt.noise"), bars, barWords);
        content = Parts.column();
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
    public void show(Now now) { }

    @Override
    public void opened() {
        watch.start();
        show();
    }

    @Override
    public void closed() {
        watch.stop();
    }

    /** The input that is listened to now; a live take ends first, for many devices are heard by one only. */
    private Callable<NoiseParts> input() {
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
        content.getChildren().setAll(step);
        if (picture.isPresent()) {
            showBars(picture.get());
            content.getChildren().add(noise);
            if (picture.get().standing() != Standing.QUIET) {
                ranking.getChildren().setAll(causes(picture.get()));
                content.getChildren().add(ranking);
            }
        }
    }

    private List<Node> step(Optional<HuntPicture> picture) {
        Node buttons = buttons(picture);
        String problem = model.listening().answer().problem();
        String asked = picture.isEmpty() ? sentence("hunt.begin") : picture.get().next().map(task -> words.say("move.title", picture.get().steps().size() + 1, words.say("move.why", task.words())))
            .orElse(words.say("move.why", picture.get().conclusion()));
        List<Node> nodes = new java.util.ArrayList<>(List.of(Parts.text(words.say("hunt.title"), "sheet-title"), Parts.text(asked, "asking")));
        picture.flatMap(HuntPicture::cure).ifPresent(cure -> nodes.add(Parts.text(words.say("move.why", cure), "cure")));
        if (picture.flatMap(HuntPicture::next).isPresent() && !picture.get().steps().isEmpty()) {
            nodes.add(1, Parts.text(sentence("hunt.back")));
        }
        if (picture.isPresent() && model.isUnsteady()) {
            nodes.add(Parts.text(sentence("hunt.unsteady"), "cure"));
        }
        if (!problem.isEmpty()) {
            nodes.add(Parts.text(words.say("journal.problem", problem), "cure"));
        }
        nodes.add(buttons);
        nodes.add(Parts.text(words.say("hunt.earth"), "quiet"));
        return nodes;
    }

    private Node buttons(Optional<HuntPicture> picture) {
        if (model.listening().isWaiting()) {
            ProgressBar progress = new ProgressBar(ProgressBar.INDETERMINATE_PROGRESS);
            return Parts.row(progress, Parts.text(words.say("hunt.listening", HuntModel.SECONDS)));
        }
        FlowPane row = new FlowPane();
        row.getStyleClass().add("buttons");
        if (picture.flatMap(HuntPicture::next).isPresent()) {
            row.getChildren().addAll(button("hunt-done", "hunt.done", () -> model.tried(input()), "accent"),
                button("hunt-skip", "hunt.skip", model::skip));
        }
        row.getChildren().add(button("hunt-begin", picture.isEmpty() ? "hunt.start" : "hunt.again", () -> model.begin(input()),
            picture.isEmpty() ? "accent" : "flat"));
        return row;
    }

    private Button button(String id, String key, Runnable action, String... styles) {
        Button button = Parts.button(id, words.say(key), () -> {
            action.run();
            show();
        }, styles);
        button.getStyleClass().add("big-answer");
        return button;
    }

    private void showBars(HuntPicture picture) {
        Optional<HuntPicture.Step> last = picture.steps().isEmpty() ? Optional.empty() : Optional.of(picture.steps().get(picture.steps().size() - 1));
        List<HuntPicture.Bar> before = last.map(HuntPicture.Step::before).orElse(picture.noise());
        List<HuntPicture.Bar> after = last.map(HuntPicture.Step::after).orElse(List.of());
        bars.paint((g, width, height) -> painter.paint(g, width, height, before, after));
        barWords.getChildren().setAll(Parts.text(words.say(last.isPresent() ? "hunt.bars-both" : "hunt.bars"), "quiet"));
        String hunted = picture.noise().stream().filter(bar -> bar.part() == picture.hunted()).findFirst().map(HuntPicture.Bar::word).orElse("");
        last.ifPresentOrElse(each -> barWords.getChildren().add(Parts.text(words.say("hunt.outcome", hunted, each.outcomeWord(), words.change(Math.rint(each.changeDb() * 10) / 10),
            words.number(each.halfWidthDb(), 1)), "verdict")), () -> barWords.getChildren().add(Parts.text(words.say("hunt.hunted", hunted))));
    }

    private List<Node> causes(HuntPicture picture) {
        List<Node> nodes = new java.util.ArrayList<>(List.of(Parts.text(words.say("hunt.causes"), "sheet-title")));
        GridPane grid = new GridPane();
        grid.getStyleClass().add("form");
        for (int i = 0; i < Math.min(MOST_CAUSES, picture.suspects().size()) && (i == 0 || picture.suspects().get(i).probability() >= LEAST_SHOWN); i++) {
            HuntPicture.Cause cause = picture.suspects().get(i);
            double sure = Math.min(MOST_SAID, cause.probability());
            ProgressBar bar = new ProgressBar(sure);
            bar.setMinWidth(around.ink().em() * 8);
            grid.add(bar, 0, i);
            grid.add(Parts.word(words.say("view.percent", sure)), 1, i);
            Node name = Parts.text(cause.words());
            grid.add(name, 2, i);
            GridPane.setHgrow(name, Priority.ALWAYS);
        }
        nodes.add(grid);
        return nodes;
    }

    private String sentence(String key) {
        return words.say("move.why", words.say(evenwood.judge.Statement.of(key)));
    }
}
