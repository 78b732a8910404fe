package evenwood.ui.screen;

import evenwood.journal.TakeLine;
import evenwood.journal.TakeWords;
import evenwood.ui.model.ChosenTake;
import evenwood.ui.model.FindingLine;
import evenwood.ui.model.JournalWords;
import evenwood.ui.model.Later;
import evenwood.ui.model.SoundChoice;
import evenwood.ui.model.Words;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** One kept take: what was found that day, what had happened before, and the player's words, to be changed. */
final class KeptTakeView {
    private final Words words;
    private final JournalWords said;
    private final ChosenTake chosen;
    private final VBox sheet = Parts.sheet("");
    private final RecallView recall;
    private final VBox column;
    private final Watch<Later.Answer<ChosenTake.Opened>> watch;
    private final Watch<Later.Answer<Path>> sound;
    private final Surroundings around;

    KeptTakeView(Surroundings around) {
        words = around.words();
        said = new JournalWords(words);
        chosen = around.journal().chosen();
        recall = new RecallView(around);
        column = Parts.column(sheet, recall.node());
        this.around = around;
        watch = new Watch<>(chosen.opened()::answer, this::show);
        sound = new Watch<>(chosen.sound()::answer, this::hear);
    }

    JournalSection section() {
        return new JournalSection("take", column, List.of(watch, sound, recall.watch()));
    }

    private void show(Later.Answer<ChosenTake.Opened> answer) {
        recall.show(answer.value().map(ChosenTake.Opened::take));
        if (answer.value().isEmpty()) {
            String key = chosen.id().isEmpty() ? "journal.choose-one" : "journal.looking";
            sheet.getChildren().setAll(Parts.text(answer.problem().isEmpty() ? words.say(key) : words.say("journal.problem", answer.problem()), "quiet"));
            return;
        }
        ChosenTake.Opened opened = answer.value().get();
        TakeLine line = opened.take().line();
        sheet.getChildren().setAll(Parts.text(said.title(line), "verdict"), Parts.text(said.where(line), "quiet"));
        List<FindingLine> findings = FindingLine.of(opened.take().assessment(), words);
        for (FindingLine finding : findings) {
            sheet.getChildren().add(Parts.text(words.say("journal.finding", finding.fault(), finding.grade(), finding.evidence())));
        }
        if (findings.isEmpty()) {
            sheet.getChildren().add(Parts.text(words.say("journal.all-well")));
        }
        sheet.getChildren().add(Parts.text(said.levels(opened.take().assessment().readings()), "quiet"));
        opened.events().forEach(event -> sheet.getChildren().add(Parts.text(said.before(event, line), "quiet")));
        if (line.hasAudio()) {
            sheet.getChildren().add(Parts.button("journal-hear", words.say("journal.hear"), chosen::askSound));
        }
        sheet.getChildren().add(form(line));
    }

    /** The kept sound becomes the take everything is about: it can be heard, and heard with moves. */
    private void hear(Later.Answer<Path> answer) {
        answer.value().ifPresent(file -> {
            chosen.sound().drop();
            around.take().start(new SoundChoice.Recording(file, 0));
            around.open().accept("play");
        });
        if (!answer.problem().isEmpty()) {
            sheet.getChildren().add(Parts.text(words.say("journal.problem", answer.problem()), "cure"));
        }
    }

    private Node form(TakeLine line) {
        GridPane form = new GridPane();
        form.getStyleClass().add("form");
        TextField venue = field(form, "journal-venue", "journal.venue", line.venue());
        TextField note = field(form, "journal-note", "journal.note", line.note());
        TextField tags = field(form, "journal-tags", "journal.tags", String.join(" ", line.tags()));
        Button keep = Parts.button("journal-say", words.say("journal.say"), () ->
            chosen.say(new TakeWords(line.instrument(), venue.getText(), note.getText(), List.of(tags.getText().strip().split("[\\s,]+")))));
        keep.setDisable(true);
        for (TextField field : List.of(venue, note, tags)) {
            field.textProperty().addListener((is, was, text) -> keep.setDisable(false));
            field.setOnAction(event -> keep.fire());
        }
        form.add(keep, 1, form.getRowCount());
        return form;
    }

    private TextField field(GridPane form, String id, String key, String text) {
        TextField field = new TextField(text);
        field.setId(id);
        field.setAccessibleText(words.say(key));
        form.addRow(form.getRowCount(), Parts.word(words.say(key)), field);
        GridPane.setHgrow(field, Priority.ALWAYS);
        return field;
    }
}
