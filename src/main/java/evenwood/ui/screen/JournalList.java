package evenwood.ui.screen;

import evenwood.journal.TakeLine;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.JournalWords;
import evenwood.ui.model.Later;
import evenwood.ui.model.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import javafx.collections.FXCollections;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListView;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** The kept takes that match, newest first; a click looks at one, a tick picks it to compare. */
final class JournalList {
    /** What the list is told. */
    interface Told {
        /** This take is to be looked at. */
        void look(TakeLine take);

        /** Another take was ticked, or one less. */
        void picked();
    }

    /** As a part of the page. */
    static final String ID = "list";
    private static final double CELL_EMS = 4.5;

    private final Words words;
    private final JournalWords said;
    private final JournalModel model;
    private final Told told;
    private final ListView<TakeLine> list = new ListView<>();
    private final Label count = Parts.text("", "quiet");
    private final ComboBox<String> instrument = new ComboBox<>();
    private final VBox sheet;
    private final Watch<Later.Answer<JournalModel.Found>> watch;
    private boolean filling;

    JournalList(Surroundings around, Told told) {
        this.told = told;
        words = around.words();
        said = new JournalWords(words);
        model = around.journal();
        list.setId("journal-list");
        list.setCellFactory(view -> new JournalCell(around, model, this::pick));
        list.setFixedCellSize(around.ink().em() * CELL_EMS);
        list.setPrefHeight(around.ink().em() * CELL_EMS * 6);
        list.setMinHeight(around.ink().em() * CELL_EMS * 3);
        list.setAccessibleText(words.say("journal.title"));
        list.setOnKeyPressed(event -> {
            if (event.getCode() == KeyCode.SPACE && list.getSelectionModel().getSelectedItem() != null) {
                pick(list.getSelectionModel().getSelectedItem());
                event.consume();
            }
        });
        list.getSelectionModel().selectedItemProperty().addListener((is, was, take) -> {
            if (take != null && !filling) {
                told.look(take);
            }
        });
        VBox.setVgrow(list, Priority.ALWAYS);
        sheet = Parts.sheet(words.say("journal.title"), search(), filters(), count, list, Parts.text(words.say("journal.pick"), "quiet"));
        watch = new Watch<>(model.found()::answer, this::show);
    }

    VBox node() {
        return sheet;
    }

    Watch<?> watch() {
        return watch;
    }

    JournalSection section() {
        return new JournalSection(ID, sheet, List.of());
    }

    private Node search() {
        TextField field = new TextField(model.search());
        field.setId("journal-search");
        field.setPromptText(words.say("journal.search"));
        field.setAccessibleText(words.say("journal.search"));
        field.textProperty().addListener((is, was, text) -> model.search(text));
        return field;
    }

    private Node filters() {
        instrument.setId("journal-instrument");
        instrument.setAccessibleText(words.say("rig.part.instrument"));
        instrument.setConverter(Choosers.words(id -> id.isEmpty() ? words.say("journal.all") : said.instrument(id)));
        instrument.valueProperty().addListener((is, was, id) -> {
            if (!filling && id != null) {
                model.instrument(id);
            }
        });
        ComboBox<Integer> period = new ComboBox<>();
        period.setId("journal-period");
        period.setAccessibleText(words.say("journal.period"));
        period.getItems().setAll(JournalModel.PERIODS_DAYS);
        period.setConverter(Choosers.words(days -> words.say("journal.period." + days)));
        period.setValue(model.period());
        period.valueProperty().addListener((is, was, days) -> model.period(days));
        FlowPane row = new FlowPane(instrument, period);
        row.getStyleClass().add("buttons");
        return row;
    }

    private void pick(TakeLine take) {
        model.pick(take.id());
        list.refresh();
        told.picked();
    }

    private void show(Later.Answer<JournalModel.Found> answer) {
        if (answer.value().isEmpty()) {
            count.setText(answer.problem().isEmpty() ? words.say("journal.looking") : words.say("journal.problem", answer.problem()));
            return;
        }
        JournalModel.Found found = answer.value().get();
        filling = true;
        if (found.takes().size() < list.getItems().size()) {
            list.scrollTo(0);
        }
        list.setItems(FXCollections.observableList(found.takes()));
        model.chosen().id().ifPresent(id -> IntStream.range(0, found.takes().size()).filter(i -> found.takes().get(i).id() == id).findFirst()
            .ifPresent(list.getSelectionModel()::select));
        if (model.chosen().id().isEmpty() && !found.takes().isEmpty()) {
            list.getSelectionModel().select(0);
            model.chosen().open(found.takes().get(0).id());
        }
        count.setText(words.say("journal.count", found.takes().size(), found.all()));
        List<String> instruments = new ArrayList<>(List.of(""));
        instruments.addAll(found.instruments());
        instrument.getItems().setAll(instruments);
        instrument.setValue(model.instrument());
        filling = false;
    }
}
