package evenwood.ui.screen;

import evenwood.journal.TakeComparison;
import evenwood.ui.model.ComparePicture;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.Words;
import evenwood.ui.paint.TonePainter;
import java.util.List;
import javafx.scene.control.Label;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** Two kept takes beside each other: how the tone differs and how sure that is, what stood elsewhere, and what is a real change. */
final class CompareView {
    private final Words words;
    private final JournalModel model;
    private final Board tone;
    private final TonePainter painter;
    private final VBox sheet = Parts.sheet("");
    private final Watch<Later.Answer<TakeComparison>> watch;

    CompareView(Surroundings around) {
        words = around.words();
        model = around.journal();
        tone = new Board(around.ink().em() * 20, around.ink().em() * 15);
        painter = new TonePainter(around.ink(), words::frequency);
        watch = new Watch<>(model.compared()::answer, this::show);
    }

    JournalSection section() {
        return new JournalSection("compare", sheet, List.of(watch));
    }

    /** Another take was picked. */
    void show() {
        show(model.compared().answer());
    }

    private void show(Later.Answer<TakeComparison> answer) {
        sheet.getChildren().setAll(Parts.text(words.say("journal.compare"), "sheet-title"));
        if (answer.value().isEmpty()) {
            String key = model.picked().isEmpty() ? "journal.pick-two" : model.picked().size() == 1 ? "journal.pick-another" : "journal.looking";
            sheet.getChildren().add(Parts.text(answer.problem().isEmpty() ? words.say(key) : words.say("journal.problem", answer.problem()), "quiet"));
            return;
        }
        ComparePicture picture = ComparePicture.of(answer.value().get(), words);
        tone.saying(picture.toneWords());
        tone.paint((g, width, height) -> painter.paint(g, width, height, picture.tone()));
        sheet.getChildren().addAll(Parts.text(picture.title(), "verdict"), tone, Parts.text(picture.toneWords(), "quiet"),
            Parts.text(words.say("journal.compare-words"), "quiet"), Parts.text(words.say("journal.differs"), "sheet-title"));
        picture.lines().forEach(line -> sheet.getChildren().add(Parts.text(line)));
        sheet.getChildren().addAll(Parts.text(words.say("journal.readings"), "sheet-title"), table(picture), Parts.text(picture.known(), "quiet"));
    }

    private GridPane table(ComparePicture picture) {
        GridPane table = new GridPane();
        table.getStyleClass().add("table");
        table.addRow(0, Parts.word(""), Parts.word(words.say("journal.earlier"), "quiet"), Parts.word(words.say("journal.later"), "quiet"), Parts.word(words.say("journal.change"), "quiet"));
        int row = 1;
        for (ComparePicture.Row each : picture.readings()) {
            Label change = Parts.word(each.change(), each.isReal() ? "cure" : "label");
            table.addRow(row++, Parts.word(each.name(), "quiet"), Parts.word(each.before()), Parts.word(each.after()), change,
                Parts.text(each.verdict(), each.isReal() ? "cure" : "quiet"));
        }
        return table;
    }
}
