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
import javafx.geometry.VPos;
import javafx.scene.control.Button;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.Spinner;
import javafx.scene.layout.ColumnConstraints;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.util.Duration;

/** Where the sound comes from: an input, each with its level beside it, a recording, or the demo. */
final class SourceScreen implements Screen {
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
        VBox content = Parts.column(Parts.text(words.say("source.title"), "page-title"), columns(live, Parts.column(what, recording, trying)));
        content.getStyleClass().add("page");
        content.setMaxWidth(around.ink().em() * 84);
        HBox centred = new HBox(content);
        centred.getStyleClass().add("centred");
        HBox.setHgrow(content, Priority.ALWAYS);
        node = Parts.scrolled(centred);
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

    /** Side by side where there is room, one under the other where there is not. */
    private GridPane columns(Region first, Region second) {
        GridPane grid = new GridPane();
        grid.getStyleClass().add("columns");
        ColumnConstraints half = new ColumnConstraints();
        half.setPercentWidth(50);
        half.setHgrow(Priority.ALWAYS);
        GridPane.setValignment(first, VPos.TOP);
        first.setMaxHeight(Double.MAX_VALUE);
        grid.widthProperty().addListener((is, was, width) -> {
            boolean wide = width.doubleValue() > around.ink().em() * 52;
            if (wide != (grid.getColumnConstraints().size() == 2) || grid.getChildren().isEmpty()) {
                grid.getChildren().clear();
                grid.getColumnConstraints().setAll(wide ? List.of(half, half) : List.of(new ColumnConstraints(0, 0, Double.MAX_VALUE, Priority.ALWAYS, null, true)));
                grid.add(first, 0, 0);
                grid.add(second, wide ? 1 : 0, wide ? 0 : 1);
            }
        });
        return grid;
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
