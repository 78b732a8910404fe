package evenwood.ui.screen;

import evenwood.coach.Assessment;
import evenwood.coach.FaultChange;
import evenwood.ui.model.FindingLine;
import evenwood.ui.model.Words;
import evenwood.ui.paint.SeverityMark;
import java.util.List;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** What was found, what changed against the take before, and what is not known yet. */
final class FindingList {
    private final Surroundings around;
    private final VBox node = Parts.column();

    FindingList(Surroundings around) {
        this.around = around;
        node.setId("findings");
    }

    Region node() {
        return node;
    }

    void show(Assessment assessment) {
        Words words = around.words();
        node.getChildren().clear();
        List<FindingLine.Changed> changes = FindingLine.changes(assessment, words);
        if (!changes.isEmpty()) {
            node.getChildren().add(Parts.text(words.say("changes.title"), "sheet-title"));
            changes.forEach(change -> node.getChildren().add(changed(change)));
        }
        node.getChildren().add(Parts.text(words.say("findings.title"), "sheet-title"));
        List<FindingLine> findings = FindingLine.of(assessment, words);
        if (findings.isEmpty()) {
            node.getChildren().add(Parts.text(words.say(assessment.readings().hasPlaying() ? "findings.none" : "findings.waiting"), "quiet"));
        }
        findings.forEach(finding -> node.getChildren().add(line(finding)));
        List<String> missing = FindingLine.missing(assessment, words);
        if (!missing.isEmpty()) {
            node.getChildren().add(Parts.text(words.say("missing.title"), "sheet-title"));
            missing.forEach(sentence -> node.getChildren().add(Parts.text(sentence, "quiet")));
        }
    }

    private Region line(FindingLine finding) {
        double em = around.ink().em();
        Board mark = new Board(em * 1.2, em * 1.2).saying(finding.grade());
        mark.setMaxSize(Region.USE_PREF_SIZE, Region.USE_PREF_SIZE);
        mark.paint((g, width, height) -> SeverityMark.paint(g, around.ink(), finding.severity(), 0, height / 2));
        VBox text = new VBox(Parts.text(around.words().say("finding.title", finding.fault(), finding.grade()), "finding-title"), Parts.text(finding.evidence(), "quiet"));
        Parts.grow(text);
        HBox row = Parts.row(mark, text);
        row.getStyleClass().add("finding");
        return row;
    }

    private Region changed(FindingLine.Changed change) {
        VBox text = new VBox(Parts.text(around.words().say("change.title", change.fault(), change.word()), "finding-title", style(change.change())),
            Parts.text(change.evidence(), "quiet"));
        return text;
    }

    private static String style(FaultChange.Change change) {
        return "change-" + change.id();
    }
}
