package evenwood.ui.screen;

import evenwood.ui.model.ChosenTake;
import evenwood.ui.model.Later;
import evenwood.ui.model.Words;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.image.Image;
import javafx.scene.image.ImageView;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;
import javafx.scene.layout.StackPane;
import javafx.scene.layout.VBox;

/** The sheet for the music stand or the engineer as it will be printed, and saved from here. */
final class SheetView {
    private final Surroundings around;
    private final Words words;
    private final ChosenTake chosen;
    private final ImageView picture = new ImageView();
    private final StackPane paper = new StackPane(picture);
    private final Label told = Parts.text("", "quiet");
    private final Label state = Parts.text("", "quiet");
    private final Button save;
    private final VBox sheet;
    private final List<Watch<?>> watches;

    SheetView(Surroundings around) {
        this.around = around;
        words = around.words();
        chosen = around.journal().chosen();
        save = Parts.button("sheet-save", words.say("sheet.save"), this::save, "accent");
        FlowPane buttons = new FlowPane(save, Parts.button("sheet-save-all", words.say("sheet.save-all"), this::saveAll));
        buttons.getStyleClass().add("buttons");
        picture.setPreserveRatio(true);
        picture.setSmooth(true);
        picture.setAccessibleText(words.say("sheet.title"));
        sheet = Parts.sheet(words.say("sheet.title"), buttons, told, state, paper);
        paper.getStyleClass().add("paper");
        paper.setMaxWidth(Region.USE_PREF_SIZE);
        sheet.setMinWidth(0);
        sheet.widthProperty().addListener((is, was, width) -> picture.setFitWidth(Math.min(around.ink().em() * 56, width.doubleValue() - around.ink().em() * 4)));
        watches = List.of(new Watch<>(chosen.opened()::answer, this::opened), new Watch<>(chosen.sheet()::answer, this::show), new Watch<>(chosen.saved()::answer, this::saved));
    }

    JournalSection section() {
        return new JournalSection("sheet", sheet, watches);
    }

    private void opened(Later.Answer<ChosenTake.Opened> answer) {
        save.setDisable(answer.value().isEmpty());
        if (answer.value().isPresent()) {
            chosen.askSheet(words);
        }
        show(chosen.sheet().answer());
    }

    private void show(Later.Answer<byte[]> answer) {
        String waiting = words.say(chosen.id().isEmpty() ? "journal.choose-one" : "sheet.drawing");
        Parts.tell(state, answer.value().isPresent() ? "" : answer.problem().isEmpty() ? waiting : words.say("journal.problem", answer.problem()));
        paper.setVisible(answer.value().isPresent());
        paper.setManaged(answer.value().isPresent());
        picture.setImage(answer.value().map(png -> new Image(new ByteArrayInputStream(png))).orElse(null));
    }

    private void saved(Later.Answer<Path> answer) {
        Parts.tell(told, !answer.problem().isEmpty() ? words.say("journal.problem", answer.problem()) : answer.value().map(file -> words.say("sheet.saved", file)).orElse(""));
    }

    private void save() {
        SaveAs.ask(around, sheet, "sheet.save", words.say("sheet.file", chosen.id().orElse(0)), ChosenTake.SHEET_ENDINGS).ifPresent(file -> chosen.saveSheet(file, words));
    }

    private void saveAll() {
        SaveAs.ask(around, sheet, "sheet.save-all", words.say("sheet.file-all"), ChosenTake.SHEETS_ENDINGS).ifPresent(file -> chosen.saveSheetsOfAllInstruments(file, words));
    }
}
