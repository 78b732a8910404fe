package evenwood.ui.screen;

import evenwood.report.HuntPicture;
import evenwood.ui.model.Words;
import javafx.scene.Node;
import javafx.scene.control.ProgressBar;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** What was tried and what it did, and which causes that makes likely. */
final class HuntSteps {
    private static final int MOST_CAUSES = 5;
    private static final double MOST_SAID = 0.99;
    private static final double LEAST_SHOWN = 0.01;

    private HuntSteps() { }

    /** "hum: all but gone, −16 dB (±2.6 dB)" */
    static String outcome(String hunted, HuntPicture.Step step, Words words) {
        return words.say("hunt.outcome", hunted, step.outcomeWord(), words.change(Math.rint(step.changeDb() * 10) / 10), words.number(step.halfWidthDb(), 1));
    }

    static void show(VBox sheet, HuntPicture picture, Surroundings around) {
        Words words = around.words();
        sheet.getChildren().setAll(Parts.text(words.say(picture.cure().isPresent() ? "hunt.causes-end" : "hunt.causes"), "sheet-title"), causes(picture, around));
        if (!picture.steps().isEmpty()) {
            String hunted = picture.noise().stream().filter(bar -> bar.part() == picture.hunted()).findFirst().map(HuntPicture.Bar::word).orElse("");
            sheet.getChildren().add(Parts.text(words.say("hunt.tried"), "sheet-title"));
            picture.steps().forEach(step -> sheet.getChildren().addAll(Parts.text(words.say("move.why", step.task().words())),
                Parts.text(outcome(hunted, step, words), "quiet")));
        }
    }

    private static Node causes(HuntPicture picture, Surroundings around) {
        GridPane grid = new GridPane();
        grid.getStyleClass().add("form");
        for (int i = 0; i < Math.min(MOST_CAUSES, picture.suspects().size()) && (i == 0 || picture.suspects().get(i).probability() >= LEAST_SHOWN); i++) {
            HuntPicture.Cause cause = picture.suspects().get(i);
            double sure = Math.min(MOST_SAID, cause.probability());
            ProgressBar bar = new ProgressBar(sure);
            bar.setMinWidth(around.ink().em() * 8);
            Node name = Parts.text(cause.words(), i == 0 ? "cure" : "label");
            grid.addRow(i, bar, Parts.word(around.words().say("view.percent", sure)), name);
            GridPane.setHgrow(name, Priority.ALWAYS);
        }
        return grid;
    }
}
