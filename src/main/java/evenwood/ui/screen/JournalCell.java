package evenwood.ui.screen;

import evenwood.journal.TakeLine;
import evenwood.ui.model.JournalModel;
import evenwood.ui.model.JournalWords;
import java.util.function.Consumer;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.VBox;

/** One kept take in the list; the same cells are used for all ten thousand. */
final class JournalCell extends ListCell<TakeLine> {
    private final JournalModel model;
    private final JournalWords said;
    private final CheckBox tick = new CheckBox();
    private final Label when = new Label();
    private final Label about = new Label();
    private final Label found = new Label();
    /** Everything, where the list is too narrow for it. */
    private final Tooltip whole = new Tooltip();
    private final HBox row;

    /** @param pick ticks a take to compare it, or lets go of it */
    JournalCell(Surroundings around, JournalModel model, Consumer<TakeLine> pick) {
        this.model = model;
        said = new JournalWords(around.words());
        when.getStyleClass().add("balance-name");
        found.getStyleClass().add("quiet");
        VBox lines = new VBox(when, about, found);
        lines.setMinWidth(0);
        HBox.setHgrow(lines, Priority.ALWAYS);
        // With the keyboard the list's space key ticks; the box is for the mouse.
        tick.setFocusTraversable(false);
        tick.setTooltip(new Tooltip(around.words().say("journal.tick")));
        tick.setOnAction(event -> pick.accept(getItem()));
        row = new HBox(tick, lines);
        row.getStyleClass().add("journal-row");
        row.setMinWidth(0);
        row.setPrefWidth(1);
    }

    @Override
    protected void updateItem(TakeLine take, boolean none) {
        super.updateItem(take, none);
        if (none || take == null) {
            setGraphic(null);
            setTooltip(null);
            setAccessibleText("");
            return;
        }
        tick.setSelected(model.picked().contains(take.id()));
        when.setText(said.when(take));
        about.setText(said.about(take));
        found.setText(said.found(take));
        setAccessibleText(String.join(", ", when.getText(), about.getText(), found.getText()));
        whole.setText(String.join("\n", when.getText(), about.getText(), found.getText()));
        setTooltip(whole);
        setGraphic(row);
    }
}
