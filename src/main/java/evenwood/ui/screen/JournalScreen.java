package evenwood.ui.screen;

import evenwood.journal.EventKind;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeLine;
import evenwood.ui.model.ComparePicture;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.JournalWords;
import evenwood.ui.model.Later;
import evenwood.ui.model.Now;
import evenwood.ui.model.TrendPicture;
import evenwood.ui.model.Words;
import evenwood.ui.paint.TonePainter;
import evenwood.ui.paint.TrendPainter;
import java.util.ArrayList;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.MenuButton;
import javafx.scene.control.MenuItem;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** Every take that was kept: find, pick two to compare, follow a reading over the months. */
final class JournalScreen implements Screen {
    private static final double WIDE_EMS = 66;

    private final Surroundings around;
    private final Words words;
    private final JournalWords said;
    private final JournalModel model;
    private final ListView<TakeLine> list = new ListView<>();
    private final Label count = Parts.text("", "quiet");
    private final ComboBox<String> instrument = new ComboBox<>();
    private final VBox comparison = Parts.sheet("");
    private final Board tone;
    private final TonePainter tonePainter;
    private final Board trend;
    private final TrendPainter trendPainter;
    private final VBox supported = Parts.column();
    private final VBox listSheet;
    private final VBox trendSheet;
    private final VBox empty;
    private final VBox content = new VBox();
    private final ScrollPane node;
    private final List<Watch<?>> watches;
    private Boolean wide;
    private boolean filling;

    JournalScreen(Surroundings around) {
        this.around = around;
        words = around.words();
        said = new JournalWords(words);
        model = around.journal();
        double em = around.ink().em();
        tone = new Board(em * 20, em * 15);
        tonePainter = new TonePainter(around.ink(), words::frequency);
        trend = new Board(em * 20, em * 14);
        trendPainter = new TrendPainter(around.ink(), tick -> words.number(tick, 0));
        list.setId("journal-list");
        list.setCellFactory(view -> new JournalCell(around, model));
        list.setFixedCellSize(em * 4.3);
        list.setPrefHeight(em * 30);
        list.setAccessibleText(words.say("journal.title"));
        list.setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.SPACE || event.getCode() == KeyCode.ENTER) {
                pick(list.getSelectionModel().getSelectedItem());
                event.consume();
            }
        });
        list.setOnMouseClicked(event -> pick(list.getSelectionModel().getSelectedItem()));
        VBox.setVgrow(list, Priority.ALWAYS);
        listSheet = Parts.sheet(words.say("journal.title"), search(), count, list, Parts.text(words.say("journal.pick"), "quiet"));
        trendSheet = Parts.sheet(words.say("journal.trend"), follow(), trend, supported);
        empty = Parts.sheet(words.say("journal.empty-title"), Parts.text(words.say("journal.empty")),
            Parts.button("journal-play", words.say("journal.to-play"), () -> around.open().accept("play"), "accent"));
        content.getStyleClass().add("page");
        content.setMinWidth(0);
        node = Parts.scrolled(content);
        node.widthProperty().addListener((is, was, width) -> arrange(width.doubleValue() > em * WIDE_EMS));
        watches = List.of(new Watch<>(model.found()::answer, this::showFound), new Watch<>(model.compared()::answer, this::showCompared),
            new Watch<>(model.overTime()::answer, this::showTrend));
        arrange(true);
    }

    @Override
    public String id() {
        return "journal";
    }

    @Override
    public Region node() {
        return node;
    }

    @Override
    public void show(Now now) { }

    @Override
    public void opened() {
        model.look();
        watches.forEach(Watch::start);
    }

    @Override
    public void closed() {
        watches.forEach(Watch::stop);
    }

    /** Shows answers that have come, without waiting for the next frame. */
    void look() {
        watches.forEach(Watch::look);
    }

    private Node search() {
        TextField field = new TextField(model.search());
        field.setId("journal-search");
        field.setPromptText(words.say("journal.search"));
        field.setAccessibleText(words.say("journal.search"));
        field.textProperty().addListener((is, was, text) -> model.search(text));
        HBox.setHgrow(field, Priority.ALWAYS);
        instrument.setId("journal-instrument");
        instrument.setAccessibleText(words.say("rig.part.instrument"));
        instrument.setConverter(Choosers.words(id -> id.isEmpty() ? words.say("journal.all") : said.instrument(id)));
        instrument.setMaxWidth(Double.MAX_VALUE);
        instrument.valueProperty().addListener((is, was, id) -> {
            if (!filling && id != null) {
                model.instrument(id);
            }
        });
        return Parts.column(field, instrument);
    }

    private Node follow() {
        ComboBox<String> reading = new ComboBox<>();
        reading.setId("journal-reading");
        reading.setAccessibleText(words.say("journal.trend"));
        reading.getItems().setAll(JournalModel.READINGS);
        reading.setConverter(Choosers.words(said::reading));
        reading.setValue(model.reading());
        reading.valueProperty().addListener((is, was, name) -> model.reading(name));
        MenuButton happened = new MenuButton(words.say("journal.happened"));
        happened.setId("journal-happened");
        for (EventKind kind : EventKind.values()) {
            MenuItem item = new MenuItem(words.say("journal.event." + kind.id()));
            item.setOnAction(event -> model.happened(kind));
            happened.getItems().add(item);
        }
        FlowPane row = new FlowPane(reading, happened);
        row.getStyleClass().add("buttons");
        return row;
    }

    private void pick(TakeLine take) {
        if (take != null) {
            model.pick(take.id());
            list.refresh();
            showCompared(model.compared().answer());
        }
    }

    private void showFound(Later.Answer<JournalModel.Found> answer) {
        if (answer.value().isEmpty()) {
            count.setText(answer.problem().isEmpty() ? words.say("journal.looking") : words.say("journal.problem", answer.problem()));
            return;
        }
        JournalModel.Found found = answer.value().get();
        list.getItems().setAll(found.takes());
        count.setText(words.say("journal.count", found.takes().size(), found.all()));
        filling = true;
        List<String> instruments = new ArrayList<>(List.of(""));
        instruments.addAll(found.instruments());
        instrument.getItems().setAll(instruments);
        instrument.setValue(model.instrument());
        filling = false;
        showCompared(model.compared().answer());
        wide = null;
        arrange(node.getWidth() <= 0 || node.getWidth() > around.ink().em() * WIDE_EMS);
    }

    private void showCompared(Later.Answer<TakeComparison> answer) {
        comparison.getChildren().setAll(Parts.text(words.say("journal.compare"), "sheet-title"));
        if (answer.value().isPresent()) {
            ComparePicture picture = ComparePicture.of(answer.value().get(), words);
            tone.saying(picture.toneWords());
            tone.paint((g, width, height) -> tonePainter.paint(g, width, height, picture.tone()));
            comparison.getChildren().addAll(Parts.text(picture.title()), tone, Parts.text(picture.toneWords(), "quiet"));
            picture.lines().forEach(line -> comparison.getChildren().add(Parts.text(line)));
        } else {
            String key = model.picked().isEmpty() ? "journal.pick-two" : model.picked().size() == 1 ? "journal.pick-another" : "journal.looking";
            comparison.getChildren().add(Parts.text(answer.problem().isEmpty() ? words.say(key) : words.say("journal.problem", answer.problem()), "quiet"));
        }
    }

    private void showTrend(Later.Answer<JournalModel.OverTime> answer) {
        if (answer.value().isEmpty()) {
            supported.getChildren().setAll(Parts.text(answer.problem().isEmpty() ? words.say("journal.looking") : words.say("journal.problem", answer.problem()), "quiet"));
            return;
        }
        JournalModel.OverTime over = answer.value().get();
        TrendPicture picture = TrendPicture.of(over.trend(), said);
        List<String> lines = said.supported(over.trend());
        trend.saying(String.join(" ", lines));
        trend.paint((g, width, height) -> trendPainter.paint(g, width, height, picture));
        supported.getChildren().setAll(Parts.text(words.say("journal.trend-words"), "quiet"));
        lines.forEach(line -> supported.getChildren().add(Parts.text(line)));
        over.suspicions().forEach(each -> supported.getChildren().add(Parts.text(said.suspicion(each), "cure")));
    }

    private void arrange(boolean nowWide) {
        if (wide != null && wide == nowWide) {
            return;
        }
        wide = nowWide;
        double em = around.ink().em();
        content.getChildren().clear();
        boolean nothing = model.found().answer().value().map(found -> found.all() == 0).orElse(false);
        if (nothing) {
            content.getChildren().add(empty);
            return;
        }
        node.setFitToHeight(nowWide);
        if (nowWide) {
            listSheet.setMinWidth(em * 32);
            listSheet.setMaxWidth(em * 34);
            VBox right = Parts.column(comparison, trendSheet);
            ScrollPane scrolled = Parts.scrolled(right);
            HBox.setHgrow(scrolled, Priority.ALWAYS);
            HBox row = new HBox(listSheet, scrolled);
            row.getStyleClass().add("row");
            VBox.setVgrow(row, Priority.ALWAYS);
            content.getChildren().add(row);
        } else {
            listSheet.setMinWidth(0);
            listSheet.setMaxWidth(Double.MAX_VALUE);
            content.getChildren().addAll(listSheet, comparison, trendSheet);
        }
    }
}
