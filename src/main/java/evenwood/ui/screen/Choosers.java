package evenwood.ui.screen;

import evenwood.rig.Tap;
import evenwood.ui.model.RigModel;
import evenwood.ui.model.Words;
import java.util.Locale;
import java.util.function.Function;
import javafx.scene.control.ComboBox;
import javafx.util.StringConverter;

/** Lists to choose a part of the rig from, in the player's words. */
final class Choosers {
    private Choosers() { }

    static ComboBox<String> part(Surroundings around, RigModel.Part part) {
        ComboBox<String> box = new ComboBox<>();
        box.getItems().setAll(around.rig().ids(part));
        box.setConverter(words(id -> around.rig().name(part, id, around.words())));
        box.setValue(around.rig().chosen(part));
        box.setId("rig-" + part.name().toLowerCase(Locale.ROOT));
        box.setMaxWidth(Double.MAX_VALUE);
        box.setAccessibleText(around.words().say("rig.part." + part.name().toLowerCase(Locale.ROOT)));
        box.valueProperty().addListener((is, was, id) -> {
            around.rig().choose(part, id);
            around.take().judgeAgain();
        });
        return box;
    }

    static ComboBox<Tap> tap(Surroundings around) {
        Words words = around.words();
        ComboBox<Tap> box = new ComboBox<>();
        box.getItems().setAll(Tap.values());
        box.setConverter(words(tap -> words.say("tap." + tap.name().toLowerCase(Locale.ROOT).replace('_', '-'))));
        box.setValue(around.rig().tap());
        box.setId("rig-tap");
        box.setMaxWidth(Double.MAX_VALUE);
        box.setAccessibleText(words.say("rig.part.tap"));
        box.valueProperty().addListener((is, was, tap) -> {
            around.rig().choose(tap);
            around.take().judgeAgain();
        });
        return box;
    }

    static <T> StringConverter<T> words(Function<T, String> name) {
        return new StringConverter<>() {
            @Override
            public String toString(T value) {
                return value == null ? "" : name.apply(value);
            }

            @Override
            public T fromString(String text) {
                throw new UnsupportedOperationException("the list is not typed into");
            }
        };
    }
}
