package evenwood.ui.screen;

import evenwood.coach.Move;
import evenwood.ui.model.GuideModel;
import evenwood.ui.model.LevelPicture;
import evenwood.ui.model.Now;
import evenwood.ui.model.PlayedSource;
import evenwood.ui.model.Words;
import evenwood.ui.paint.LevelBarPainter;
import evenwood.ui.paint.StepPainter;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The guided check: quiet, soft, hard, play; goes on when enough was really heard. */
final class GuideScreen implements Screen {
    private static final double WIDE_EMS = 60;
    private final Surroundings around;
    private final GuideModel model;
    private final Board steps;
    private final Board level;
    private final Label asking = Parts.text("", "asking");
    private final Label listening = Parts.text("", "quiet");
    private final HBox heard;
    private final Label levelWords = Parts.word("", "level-words");
    private final Button begin;
    private final Button pause;
    private final Button redo;
    private final Button skip;
    private final VBox running;
    private final VBox purposes;
    private final Outcome outcome;
    private final Region node;
    private final StepPainter stepPainter;
    private final LevelBarPainter barPainter;

    GuideScreen(Surroundings around) {
        this.around = around;
        Words words = around.words();
        double em = around.ink().em();
        model = around.guide();
        stepPainter = new StepPainter(around.ink());
        barPainter = new LevelBarPainter(around.ink());
        steps = new Board(em * 20, em * 8.5);
        level = new Board(em * 12, em * 2);
        HBox.setHgrow(level, Priority.ALWAYS);
        begin = Parts.button("guide-begin", words.say("guide.begin"), this::begin, "accent");
        pause = Parts.button("guide-pause", words.say("guide.pause"), this::pause);
        redo = Parts.button("guide-redo", words.say("guide.redo"), this::redo);
        skip = Parts.button("guide-skip", words.say("guide.skip"), this::skip, "flat");
        heard = Parts.row(level, levelWords);
        FlowPane buttons = new FlowPane(begin, pause, redo, skip);
        buttons.getStyleClass().add("buttons");
        Button change = Parts.button("guide-source", words.say("guide.other-source"), () -> around.open().accept("source"), "small", "flat");
        running = Parts.sheet(words.say("guide.title"), Parts.row(listening, change), steps, asking, heard, buttons);
        outcome = new Outcome(around, this::begin);
        purposes = Parts.sheet(words.say("guide.purposes"),
            new SideBySide(em * WIDE_EMS, List.of(purpose("quiet"), purpose("soft"), purpose("hard"), purpose("play")), 25, 25, 25, 25).node());
        VBox content = Parts.column(running, purposes, outcome.node());
        content.getStyleClass().add("page");
        node = Parts.scrolled(content);
        refresh(Now.NOTHING);
    }

    @Override
    public String id() {
        return "guide";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void closed() {
        outcome.stop();
    }

    @Override
    public void show(Now now) {
        refresh(now);
    }

    private void begin() {
        model.begin();
        around.take().askDemo(model.asked());
        Now now = around.take().now();
        boolean again = now.assessment().isPresent() && now.choice().isPresent() && now.choice().get().isLive();
        if (again) {
            List<Move> moves = now.assessment().get().moves();
            around.take().again(moves.size());
            around.rig().turned(moves);
        } else {
            around.take().start(PlayedSource.of(now, around.choices()));
        }
        refresh(around.take().now());
    }

    private Region purpose(String step) {
        return new VBox(Parts.text(around.words().say("guide." + step), "finding-title"), Parts.text(around.words().say("guide.purpose." + step), "quiet"));
    }

    private void pause() {
        model.pauseOrGoOn();
        refresh(around.take().now());
    }

    private void redo() {
        model.redo();
        refresh(around.take().now());
    }

    private void skip() {
        model.skip();
        if (model.isOver()) {
            around.take().stop();
        }
        refresh(around.take().now());
    }

    private void refresh(Now now) {
        Words words = around.words();
        GuideModel.Picture picture = model.picture(around.words());
        boolean on = model.isOn();
        boolean begun = model.isBegun();
        steps.saying(picture.asking());
        steps.paint((g, width, height) -> stepPainter.paint(g, width, height, picture.steps(), on));
        asking.setText(begun ? picture.over() ? words.say("guide.over") : picture.asking() : words.say("guide.intro"));
        begin.setText(words.say(begun ? "guide.again" : "guide.begin"));
        pause.setText(words.say(picture.paused() ? "guide.go-on" : "guide.pause"));
        begin.setVisible(!on);
        // Once there is something to turn, the card's button is the main one.
        boolean toTurn = picture.over() && now.assessment().filter(each -> !each.moves().isEmpty()).isPresent();
        begin.getStyleClass().remove("accent");
        if (!toTurn) {
            begin.getStyleClass().add("accent");
        }
        for (Button each : new Button[] {pause, redo, skip}) {
            each.setVisible(on);
        }
        List.of(begin, pause, redo, skip).forEach(each -> each.setManaged(each.isVisible()));
        steps.setVisible(!(begun && picture.over()));
        steps.setManaged(steps.isVisible());
        LevelPicture loud = LevelPicture.of(now, words);
        heard.setVisible(on);
        heard.setManaged(on);
        level.paint((g, width, height) -> barPainter.paint(g, width, height, loud.peakDbtp()));
        levelWords.setText(loud.peakText());
        listening.setText(words.say("guide.listening", PlayedSource.name(PlayedSource.of(now, around.choices()), words)));
        purposes.setVisible(!(begun && picture.over()));
        purposes.setManaged(purposes.isVisible());
        outcome.show(now, begun && picture.over());
    }
}
