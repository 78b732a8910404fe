package evenwood.ui.screen;

import evenwood.ui.model.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.control.CheckMenuItem;
import javafx.scene.control.Menu;
import javafx.scene.control.MenuButton;
import javafx.scene.control.RadioMenuItem;
import javafx.scene.control.ToggleButton;
import javafx.scene.control.ToggleGroup;
import javafx.scene.control.Tooltip;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.Region;

/** The pages' names in a row that wraps where the window is narrow, and how the window looks. */
final class Navigation {
    private static final double[] SCALES = {1, 1.25, 1.5, 1.75, 2};
    private final FlowPane node = new FlowPane();
    private final ToggleGroup group = new ToggleGroup();
    private final List<ToggleButton> buttons = new ArrayList<>();

    Navigation(Surroundings around, List<Screen> screens, Runnable changed) {
        Words words = around.words();
        node.getStyleClass().add("navigation");
        node.getChildren().add(Parts.word(words.say("window.title"), "brand"));
        for (int i = 0; i < screens.size(); i++) {
            String id = screens.get(i).id();
            ToggleButton button = new ToggleButton(words.say("nav." + id));
            button.setId("nav-" + id);
            button.setToggleGroup(group);
            button.setTooltip(new Tooltip(words.say("nav.key", i + 1)));
            button.setMinWidth(Region.USE_PREF_SIZE);
            button.getStyleClass().add("nav");
            button.setOnAction(event -> around.open().accept(id));
            buttons.add(button);
            node.getChildren().add(button);
        }
        node.getChildren().add(view(around, changed));
    }

    Region node() {
        return node;
    }

    void mark(String id) {
        buttons.stream().filter(button -> button.getId().equals("nav-" + id)).findFirst().ifPresent(button -> button.setSelected(true));
    }

    private static MenuButton view(Surroundings around, Runnable changed) {
        Words words = around.words();
        MenuButton view = new MenuButton(words.say("view.menu"));
        view.setId("view");
        view.setMinWidth(Region.USE_PREF_SIZE);
        CheckMenuItem dark = new CheckMenuItem(words.say("view.dark"));
        dark.setSelected(around.ink().isDark());
        dark.setOnAction(event -> {
            around.choices().put("theme", dark.isSelected() ? "dark" : "light");
            changed.run();
        });
        Menu languages = new Menu(words.say("view.language"));
        for (Locale language : Words.LANGUAGES) {
            RadioMenuItem item = new RadioMenuItem(language.getDisplayLanguage(language));
            item.setSelected(words.locale().equals(language));
            item.setOnAction(event -> {
                around.choices().put("language", language.getLanguage());
                changed.run();
            });
            languages.getItems().add(item);
        }
        Menu sizes = new Menu(words.say("view.text"));
        for (double scale : SCALES) {
            RadioMenuItem item = new RadioMenuItem(words.say("view.percent", scale));
            item.setSelected(around.choices().number("text.scale", 1) == scale);
            item.setOnAction(event -> {
                around.choices().put("text.scale", scale);
                changed.run();
            });
            sizes.getItems().add(item);
        }
        javafx.scene.control.MenuItem stand = new javafx.scene.control.MenuItem(words.say("view.stand"));
        stand.setOnAction(event -> view.fireEvent(new javafx.scene.input.KeyEvent(javafx.scene.input.KeyEvent.KEY_PRESSED, "", "",
            javafx.scene.input.KeyCode.F2, false, false, false, false)));
        view.getItems().addAll(dark, languages, sizes, stand);
        return view;
    }
}
