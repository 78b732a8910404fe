package evenwood.ui.screen;

import javafx.geometry.Pos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.ScrollPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;

/** The few shapes every page is laid out with; their looks are in the style sheet. */
final class Parts {
    private Parts() { }

    /** Text that breaks into lines and is never cut off. */
    static Label text(String words, String... styles) {
        Label label = new Label(words);
        label.setWrapText(true);
        label.setMinHeight(Region.USE_PREF_SIZE);
        label.getStyleClass().addAll(styles);
        return label;
    }

    /** Says this, or takes no room when there is nothing to say. */
    static void tell(Label label, String words) {
        label.setText(words);
        label.setVisible(!words.isEmpty());
        label.setManaged(!words.isEmpty());
    }

    /** Text on one line that takes the room it needs. */
    static Label word(String words, String... styles) {
        Label label = new Label(words);
        label.setMinWidth(Region.USE_PREF_SIZE);
        label.getStyleClass().addAll(styles);
        return label;
    }

    static Button button(String id, String words, Runnable action, String... styles) {
        Button button = new Button(words);
        button.setId(id);
        button.setMinWidth(Region.USE_PREF_SIZE);
        button.setOnAction(event -> action.run());
        button.getStyleClass().addAll(styles);
        return button;
    }

    static VBox column(Node... parts) {
        VBox box = new VBox(parts);
        box.getStyleClass().add("column");
        return box;
    }

    static HBox row(Node... parts) {
        HBox box = new HBox(parts);
        box.setAlignment(Pos.CENTER_LEFT);
        box.getStyleClass().add("row");
        return box;
    }

    /** A sheet of paper with a title on it. */
    static VBox sheet(String title, Node... parts) {
        VBox box = new VBox();
        box.getStyleClass().add("sheet");
        if (!title.isEmpty()) {
            box.getChildren().add(text(title, "sheet-title"));
        }
        box.getChildren().addAll(parts);
        return box;
    }

    static Region space() {
        Region space = new Region();
        HBox.setHgrow(space, Priority.ALWAYS);
        return space;
    }

    /** Scrolls up and down where the page is longer than the window. */
    static ScrollPane scrolled(Region content) {
        ScrollPane pane = new ScrollPane(content);
        pane.setFitToWidth(true);
        pane.setHbarPolicy(ScrollPane.ScrollBarPolicy.NEVER);
        pane.getStyleClass().add("page-scroll");
        return pane;
    }

    static void grow(Node node) {
        HBox.setHgrow(node, Priority.ALWAYS);
        VBox.setVgrow(node, Priority.ALWAYS);
    }
}
