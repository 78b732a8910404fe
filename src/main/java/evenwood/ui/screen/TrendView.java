package evenwood.ui.screen;

import evenwood.journal.EventKind;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.JournalWords;
import evenwood.ui.model.Later;
import evenwood.ui.model.TrendModel;
import evenwood.ui.model.TrendPicture;
import evenwood.ui.model.Words;
import evenwood.ui.paint.TrendPainter;
import java.time.LocalDate;
import java.time.format.FormatStyle;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.DatePicker;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.util.converter.LocalDateStringConverter;

/** One reading over the months with what happened in between, and what the numbers support. */
final class TrendView {
    private static final int MOST_EVENTS = 6;

    private final Words words;
    private final JournalWords said;
    private final JournalModel model;
    private final Board board;
    private final TrendPainter painter;
    private final VBox supported = Parts.column();
    private final VBox events = Parts.column();
    private final Label whose = Parts.text("", "quiet");
    private final VBox sheet;
    private final VBox column;
    private final Watch<Later.Answer<TrendModel.OverTime>> watch;

    TrendView(Surroundings around) {
        words = around.words();
        said = new JournalWords(words);
        model = around.journal();
        board = new Board(around.ink().em() * 20, around.ink().em() * 16);
        painter = new TrendPainter(around.ink(), (tick, unit) -> words.say("number.with-unit", words.number(tick, 0), unit));
        sheet = Parts.sheet(words.say("journal.trend"), reading(), board, supported);
        column = Parts.column(sheet, Parts.sheet(words.say("journal.happened"), Parts.text(words.say("journal.happened-words"), "quiet"), happened(), whose, events));
        watch = new Watch<>(model.trend().overTime()::answer, this::show);
    }

    JournalSection section() {
        return new JournalSection("time", column, List.of(watch));
    }

    private Node reading() {
        ComboBox<String> reading = new ComboBox<>();
        reading.setId("journal-reading");
        reading.setAccessibleText(words.say("journal.trend"));
        reading.getItems().setAll(TrendModel.READINGS);
        reading.setConverter(Choosers.words(said::reading));
        reading.setValue(model.trend().reading());
        reading.valueProperty().addListener((is, was, name) -> model.trend().reading(name));
        return reading;
    }

    private Node happened() {
        ComboBox<EventKind> kind = new ComboBox<>();
        kind.setId("event-kind");
        kind.setAccessibleText(words.say("journal.happened"));
        kind.getItems().setAll(EventKind.values());
        kind.setConverter(Choosers.words(each -> words.say("journal.event." + each.id())));
        kind.setValue(EventKind.NEW_STRINGS);
        DatePicker day = new DatePicker(LocalDate.now());
        day.setId("event-day");
        day.setConverter(new LocalDateStringConverter(FormatStyle.MEDIUM, words.locale(), null));
        day.setAccessibleText(words.say("journal.event-day"));
        TextField note = new TextField();
        note.setId("event-note");
        note.setPromptText(words.say("journal.event-note"));
        note.setAccessibleText(words.say("journal.event-note"));
        FlowPane row = new FlowPane(kind, day, note, Parts.button("event-mark", words.say("journal.event-mark"), () -> {
            LocalDate when = day.getValue() == null || day.getValue().isAfter(LocalDate.now()) ? LocalDate.now() : day.getValue();
            model.trend().happened(kind.getValue(), when, note.getText());
            note.clear();
        }, "accent"));
        row.getStyleClass().add("buttons");
        return row;
    }

    private void show(Later.Answer<TrendModel.OverTime> answer) {
        if (answer.value().isEmpty()) {
            supported.getChildren().setAll(Parts.text(answer.problem().isEmpty() ? words.say("journal.looking") : words.say("journal.problem", answer.problem()), "quiet"));
            return;
        }
        TrendModel.OverTime over = answer.value().get();
        TrendPicture picture = TrendPicture.of(over.trend(), said);
        List<String> lines = said.supported(over.trend());
        board.saying(String.join(" ", lines));
        board.paint((g, width, height) -> painter.paint(g, width, height, picture));
        supported.getChildren().setAll(Parts.text(words.say("journal.trend-words"), "quiet"));
        lines.forEach(line -> supported.getChildren().add(Parts.text(line)));
        whose.setText(words.say("journal.event-for", model.instrument().isEmpty() ? words.say("journal.all") : said.instrument(model.instrument())));
        events.getChildren().clear();
        for (int i = over.trend().events().size() - 1; i >= Math.max(0, over.trend().events().size() - MOST_EVENTS); i--) {
            events.getChildren().add(Parts.text(said.line(over.trend().events().get(i)), "quiet"));
        }
        over.suspicions().forEach(each -> supported.getChildren().add(Parts.text(said.suspicion(each), "cure")));
    }
}
