package evenwood.ui.screen;

import evenwood.ui.model.JournalSaving;
import evenwood.ui.model.Later;
import evenwood.ui.model.Words;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** Everything written to a file for another journal or a spreadsheet, with how far it is and a way out. */
final class ExportView {
    private final Surroundings around;
    private final Words words;
    private final JournalSaving saving;
    private final CheckBox sound;
    private final ProgressBar progress = new ProgressBar(0);
    private final HBox going;
    private final FlowPane buttons;
    private final Label told = Parts.text("", "quiet");
    private final Label taken = Parts.text("", "quiet");
    private final VBox sheet;
    private final VBox column;
    private final List<Watch<?>> watches;

    ExportView(Surroundings around) {
        this.around = around;
        words = around.words();
        saving = around.journal().saving();
        sound = new CheckBox(words.say("export.sound"));
        sound.setId("export-sound");
        sound.setWrapText(true);
        buttons = new FlowPane(Parts.button("export-json", words.say("export.json"), () -> write(".json"), "accent"),
            Parts.button("export-csv", words.say("export.csv"), () -> write(".csv")));
        buttons.getStyleClass().add("buttons");
        progress.setMaxWidth(Double.MAX_VALUE);
        progress.setAccessibleText(words.say("export.title"));
        HBox.setHgrow(progress, Priority.ALWAYS);
        going = Parts.row(progress, Parts.button("export-cancel", words.say("export.cancel"), this::cancel));
        sheet = Parts.sheet(words.say("export.title"), Parts.text(words.say("export.words"), "quiet"), buttons, sound, going, told);
        column = Parts.column(sheet, Parts.sheet(words.say("import.title"), Parts.text(words.say("import.words"), "quiet"),
            Parts.button("import", words.say("import.file"), this::read), taken), Parts.sheet(words.say("journal.where"), Parts.text(around.journal().file().toString())));
        watches = List.of(new Watch<>(saving.written()::answer, this::written), new Watch<>(saving::part, progress::setProgress),
            new Watch<>(saving.read()::answer, this::taken));
    }

    JournalSection section() {
        return new JournalSection("export", column, watches);
    }

    private void write(String ending) {
        SaveAs.ask(around, sheet, "export.title", words.say("export.file"), List.of(ending)).ifPresent(file -> {
            saving.write(file, sound.isSelected(), words);
            written(saving.written().answer());
        });
    }

    private void cancel() {
        saving.cancel();
        written(saving.written().answer());
        Parts.tell(told, words.say("export.cancelled"));
    }

    private void written(Later.Answer<Path> answer) {
        boolean busy = saving.written().isWaiting();
        going.setVisible(busy);
        going.setManaged(busy);
        buttons.setDisable(busy);
        Parts.tell(told, !answer.problem().isEmpty() ? words.say("journal.problem", answer.problem()) : answer.value().map(file -> words.say("sheet.saved", file)).orElse(""));
    }

    private void read() {
        SaveAs.open(around, sheet, "import.title", ".json").ifPresent(file -> {
            saving.read(file);
            Parts.tell(taken, words.say("journal.looking"));
        });
    }

    private void taken(Later.Answer<Integer> answer) {
        Parts.tell(taken, !answer.problem().isEmpty() ? words.say("journal.problem", answer.problem()) : answer.value().map(count -> words.say("import.taken", count)).orElse(""));
        answer.value().ifPresent(count -> around.journal().look());
    }
}
