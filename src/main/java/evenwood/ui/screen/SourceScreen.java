package evenwood.ui.screen;

import evenwood.sound.LiveInput;
import evenwood.ui.model.InputLevels;
import evenwood.ui.model.Now;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.SoundChoice;
import evenwood.ui.model.Words;
import evenwood.ui.paint.LevelBarPainter;
import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javafx.animation.KeyFrame;
import javafx.animation.Timeline;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Spinner;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.util.Duration;

/** Where the sound comes from: an input, each with its level beside it, a recording, or the demo. */
final class SourceScreen implements Screen {
    private static final double WIDE_EMS = 52;
    private static final Duration LOOK_EVERY = Duration.millis(100);

    private final Surroundings around;
    private final VBox inputs = Parts.column();
    private final Region node;
    private final Timeline clock = new Timeline(new KeyFrame(LOOK_EVERY, event -> look()));
    private final LevelBarPainter bar;
    private final Spinner<Integer> channel = new Spinner<>(1, 64, 1);
    private List<Line> lines = List.of();
    private InputLevels levels;
    private boolean told;

    private record Line(LiveInput input, Board level, Label words) { }

    SourceScreen(Surroundings around) {
        this.around = around;
        Words words = around.words();
        bar = new LevelBarPainter(around.ink());
        clock.setCycleCount(Timeline.INDEFINITE);
        channel.getValueFactory().setValue((int) around.choices().number("source.channel", 1));
        channel.setId("channel");
        channel.setEditable(true);
        channel.setPrefWidth(around.ink().em() * 6);
        channel.setAccessibleText(words.say("source.channel"));
        inputs.setId("inputs");
        Button demo = Parts.button("demo-check", words.say("source.demo-check"), () -> choose(new SoundChoice.DemoChecked()), "accent");
        Button played = Parts.button("demo-play", words.say("source.demo-play"), () -> choose(new SoundChoice.DemoPlayed()));
        Button file = Parts.button("file", words.say("source.file"), this::file);
        VBox live = Parts.sheet(words.say("source.live"), Parts.text(words.say("source.live-words"), "quiet"), inputs,
            Parts.row(Parts.word(words.say("source.channel")), channel));
        VBox recording = Parts.sheet(words.say("source.recording"), Parts.text(words.say("source.recording-words"), "quiet"), file);
        FlowPane demos = new FlowPane(demo, played);
        demos.getStyleClass().add("buttons");
        VBox trying = Parts.sheet(words.say("source.demo"), Parts.text(words.say("source.demo-words"), "quiet"), demos);
        VBox what = Parts.sheet(words.say("source.instrument"), Parts.text(words.say("source.instrument-words"), "quiet"), instrument());
        VBox content = Parts.column(new SideBySide(around.ink().em() * WIDE_EMS, List.of(Parts.column(live, recording), Parts.column(what, trying)), 50, 50).node());
        content.getStyleClass().add("page");
        node = Parts.scrolled(content);
    }

    @Override
    public String id() {
        return "source";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) { }

    @Override
    public void opened() {
        levels = new InputLevels();
        levels.start();
        told = false;
        look();
        clock.play();
    }

    @Override
    public void closed() {
        clock.stop();
        levels.close();
    }

    private ComboBox<String> instrument() {
        return Choosers.part(around, RigModel.Part.INSTRUMENT);
    }

    private void look() {
        showInputs(levels.inputs(), levels.isKnown());
        for (Line line : lines) {
            double peak = levels.peakDbfs(line.input().name());
            line.words().setText(around.words().level(peak, "unit.dbfs"));
            line.level().paint((g, width, height) -> bar.paint(g, width, height, peak));
        }
    }

    /** The list is made anew only when it changed, so that the focus stays where it is. */
    void showInputs(List<LiveInput> now, boolean known) {
        if (told == known && now.equals(lines.stream().map(Line::input).toList()) && !inputs.getChildren().isEmpty()) {
            return;
        }
        told = known;
        List<Line> next = new ArrayList<>();
        inputs.getChildren().clear();
        for (LiveInput input : now) {
            Line line = new Line(input, new Board(around.ink().em() * 8, around.ink().em() * 1.2), Parts.word("", "level-words"));
            next.add(line);
            inputs.getChildren().add(row(line, next.size()));
        }
        if (now.isEmpty()) {
            inputs.getChildren().add(Parts.text(around.words().say(known ? "source.no-input" : "source.looking"), "quiet"));
        }
        lines = next;
    }

    private Region row(Line line, int number) {
        Words words = around.words();
        Label name = Parts.text(words.input(line.input().name()), "input-name");
        Parts.grow(name);
        name.setMaxWidth(Double.MAX_VALUE);
        line.words().setMinWidth(around.ink().em() * 6.5);
        Button listen = Parts.button("listen-" + number, words.say("source.listen"),
            () -> choose(new SoundChoice.Live(line.input().name(), channel.getValue())));
        if (line.input().name().equals(around.choices().get("source.input", ""))) {
            listen.getStyleClass().add("accent");
        }
        listen.setAccessibleText(words.say("source.listen-to", line.input().name()));
        HBox row = Parts.row(name, line.level(), line.words(), listen);
        row.getStyleClass().add("input");
        return row;
    }

    private void file() {
        FileChooser chooser = new FileChooser();
        chooser.setTitle(around.words().say("source.file"));
        Path folder = Path.of(around.choices().get("source.folder", System.getProperty("user.home", ".")));
        if (folder.toFile().isDirectory()) {
            chooser.setInitialDirectory(folder.toFile());
        }
        File chosen = chooser.showOpenDialog(node.getScene().getWindow());
        if (chosen != null) {
            around.choices().put("source.folder", chosen.getParent());
            choose(new SoundChoice.Recording(chosen.toPath(), 0));
        }
    }

    private void choose(SoundChoice choice) {
        levels.close();
        if (choice instanceof SoundChoice.Live live) {
            around.choices().put("source.input", live.inputName());
            around.choices().put("source.channel", live.channel());
        }
        around.take().askDemo(Optional.empty());
        around.take().start(choice);
        around.open().accept("play");
    }
}
