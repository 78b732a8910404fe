package evenwood.ui.screen;

import evenwood.rig.GainRange;
import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import evenwood.ui.model.Words;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;
import javafx.scene.Node;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.Priority;

/** What the forms of the wiring page are made of. */
final class WiringFields {
    private final Surroundings around;
    private final Words words;

    WiringFields(Surroundings around) {
        this.around = around;
        words = around.words();
    }

    /** A list of presets of a kind to choose from, in the player's words. */
    ComboBox<String> presets(String id, PresetKind kind, String now, String accessible, Consumer<String> chosen) {
        return choice(id, around.rig().wiring().ids(kind), each -> name(kind, each), now, accessible, chosen);
    }

    String name(PresetKind kind, String id) {
        String key = "preset." + kind.folder() + "." + id;
        return words.has(key) ? words.say(key) : own(around.rig().wiring().presets(), kind, id);
    }

    private static String own(Presets presets, PresetKind kind, String id) {
        return switch (kind) {
            case BOXES -> presets.box(id).name();
            case CABLES -> presets.cable(id).name();
            case INPUTS -> presets.input(id).name();
            default -> presets.pickup(id).name();
        };
    }

    String gainWords(GainRange range) {
        return words.say("wiring.gain-range", words.shortNumber(range.leastDb(), 0), words.shortNumber(range.mostDb(), 0));
    }

    static boolean turns(GainRange range) {
        return range.mostDb() > range.leastDb();
    }

    static GridPane form() {
        GridPane form = new GridPane();
        form.getStyleClass().add("form");
        return form;
    }

    static void line(GridPane form, String name, Node box) {
        int row = form.getRowCount();
        form.add(Parts.word(name), 0, row);
        form.add(box, 1, row);
        GridPane.setHgrow(box, Priority.ALWAYS);
    }

    <T> ComboBox<T> choice(String id, List<T> all, Function<T, String> name, T now, String accessible, Consumer<T> chosen) {
        ComboBox<T> box = new ComboBox<>();
        box.getItems().setAll(all);
        box.setConverter(Choosers.words(name));
        box.setValue(now);
        box.setId(id);
        box.setAccessibleText(accessible);
        box.setMaxWidth(Double.MAX_VALUE);
        box.valueProperty().addListener((is, was, next) -> chosen.accept(next));
        return box;
    }

    /** Typed with comma or point; taken with Enter or when the field is left. NaN shows nothing. */
    TextField number(String id, double now, String accessible, Consumer<OptionalDouble> typed) {
        TextField field = new TextField(Double.isNaN(now) ? "" : words.shortNumber(now, 2));
        String shown = field.getText();
        field.setId(id);
        field.setPrefColumnCount(5);
        field.setMaxWidth(around.ink().em() * 9);
        field.setAccessibleText(accessible);
        Runnable take = () -> {
            if (!field.getText().equals(shown)) {
                number(field.getText()).ifPresentOrElse(value -> typed.accept(OptionalDouble.of(value)), () -> {
                    if (field.getText().isBlank()) {
                        typed.accept(OptionalDouble.empty());
                    } else {
                        field.setText(shown);
                    }
                });
            }
        };
        field.setOnAction(event -> take.run());
        field.focusedProperty().addListener((is, was, focused) -> {
            if (!focused) {
                take.run();
            }
        });
        return field;
    }

    private static Optional<Double> number(String text) {
        try {
            double value = Double.parseDouble(text.strip().replace(',', '.').replace('−', '-'));
            return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
        } catch (NumberFormatException noNumber) {
            return Optional.empty();
        }
    }
}
