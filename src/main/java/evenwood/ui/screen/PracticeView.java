package evenwood.ui.screen;

import evenwood.journal.Practice;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.Later;
import evenwood.ui.model.PracticePicture;
import evenwood.ui.model.Words;
import evenwood.ui.paint.PracticePainter;
import java.time.LocalDate;
import java.util.List;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.VBox;

/** The practice log: whether it is kept, what of and where; and what it holds, with no judgement on it. */
final class PracticeView {
    private static final double WIDE_EMS = 50;

    private final Words words;
    private final JournalModel model;
    private final Board board;
    private final PracticePainter painter;
    private final VBox held = Parts.sheet("");
    private final VBox column;
    private final Watch<Later.Answer<List<Practice>>> watch;
    private boolean wide;

    PracticeView(Surroundings around) {
        words = around.words();
        model = around.journal();
        board = new Board(around.ink().em() * 20, around.ink().em() * 12);
        painter = new PracticePainter(around.ink(), minutes -> words.say("practice.minutes", minutes));
        CheckBox wanted = new CheckBox(words.say("practice.want"));
        wanted.setId("practice-want");
        wanted.setWrapText(true);
        wanted.setSelected(around.practice().isWanted());
        wanted.setOnAction(event -> around.practice().want(wanted.isSelected()));
        VBox consent = Parts.sheet(words.say("practice.title"), wanted, Parts.text(words.say("practice.kept", model.file()), "quiet"));
        if (!around.practice().problem().isEmpty()) {
            consent.getChildren().add(Parts.text(words.say("journal.problem", around.practice().problem()), "cure"));
        }
        column = Parts.column(consent, held);
        watch = new Watch<>(model.practised()::answer, this::show);
        column.widthProperty().addListener((is, was, width) -> {
            boolean nowWide = width.doubleValue() > around.ink().em() * WIDE_EMS;
            if (nowWide != wide) {
                wide = nowWide;
                show(model.practised().answer());
            }
        });
    }

    JournalSection section() {
        return new JournalSection("practice", column, List.of(watch));
    }

    private void show(Later.Answer<List<Practice>> answer) {
        PracticePicture picture = PracticePicture.of(answer.value().orElse(List.of()), LocalDate.now(), words);
        held.getChildren().clear();
        if (picture.isEmpty()) {
            String key = answer.value().isEmpty() ? "journal.looking" : "practice.none";
            held.getChildren().add(Parts.text(answer.problem().isEmpty() ? words.say(key) : words.say("journal.problem", answer.problem()), "quiet"));
            return;
        }
        board.saying(picture.total());
        board.paint((g, width, height) -> painter.paint(g, width, height, picture));
        held.getChildren().addAll(Parts.text(picture.total(), "verdict"), board, wide ? table(picture) : lines(picture), Parts.text(words.say("practice.words"), "quiet"));
    }

    private VBox lines(PracticePicture picture) {
        VBox lines = Parts.column();
        for (PracticePicture.Sitting each : picture.sittings()) {
            lines.getChildren().addAll(Parts.text(words.say("practice.line", each.when(), each.instrument(), each.minutes())),
                Parts.text(words.say("practice.line", each.dynamics(), each.loudness(), each.treble()), "quiet"));
        }
        return lines;
    }

    private GridPane table(PracticePicture picture) {
        GridPane table = new GridPane();
        table.getStyleClass().add("table");
        table.addRow(0, Parts.word(words.say("practice.when"), "quiet"), Parts.word(words.say("rig.part.instrument"), "quiet"), Parts.word(words.say("practice.long"), "quiet"),
            Parts.word(words.say("practice.notes"), "quiet"), Parts.word(words.say("practice.loudness"), "quiet"), Parts.word(words.say("practice.treble"), "quiet"));
        for (PracticePicture.Sitting each : picture.sittings()) {
            table.addRow(table.getRowCount(), Parts.word(each.when()), Parts.word(each.instrument()), Parts.word(each.minutes()), Parts.word(each.dynamics()),
                Parts.word(each.loudness()), Parts.word(each.treble()));
        }
        return table;
    }
}
