package evenwood.ui.screen;

import evenwood.rig.Box;
import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.GainRange;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.rig.PresetKind;
import evenwood.ui.model.ChainPicture;
import evenwood.ui.model.WiringModel;
import evenwood.ui.model.Words;
import evenwood.ui.paint.FitMark;
import evenwood.wiring.Fit;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.control.ComboBox;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;

/** What is so at the chosen joint or box, in words, and what can be changed there. */
final class WiringDetails {
    private final Surroundings around;
    private final Words words;
    private final WiringModel wiring;
    private final Runnable changed;

    /** @param changed something of the chain was changed */
    WiringDetails(Surroundings around, Runnable changed) {
        this.around = around;
        words = around.words();
        wiring = around.rig().wiring();
        this.changed = changed;
    }

    /** Verdict, cure and figures of a joint, and its cable. */
    List<Node> joint(ChainPicture chain, int number) {
        List<Node> nodes = new ArrayList<>();
        nodes.add(Parts.text(chain.title(number, words), "sheet-title"));
        List<ChainPicture.Say> said = chain.said(number, words);
        if (said.isEmpty()) {
            nodes.add(marked(Fit.RIGHT, Parts.text(words.say("wiring.fits"))));
        }
        for (ChainPicture.Say say : said) {
            nodes.add(marked(say.fit(), Parts.column(Parts.text(say.evidence()), Parts.text(say.cure(), "cure"))));
        }
        int boxes = wiring.boxes().size();
        if (number <= boxes + 1) {
            nodes.add(cable(number - 1));
        }
        GridPane figures = form();
        int row = 0;
        for (List<String> line : chain.figures(number, words)) {
            figures.add(Parts.word(line.get(0), "quiet"), 0, row);
            figures.add(Parts.text(line.get(1)), 1, row++);
        }
        nodes.add(figures);
        return nodes;
    }

    private Node marked(Fit fit, Node what) {
        double em = around.ink().em();
        Board mark = new Board(em * 1.8, em * 1.8);
        mark.setMaxSize(em * 1.8, em * 1.8);
        mark.paint((g, width, height) -> FitMark.paint(g, around.ink(), fit, width / 2, height / 2, em * 0.65));
        mark.saying(words.say("wiring.fit." + fit.name().toLowerCase(Locale.ROOT)));
        HBox row = new HBox(mark, what);
        row.getStyleClass().add("finding");
        HBox.setHgrow(what, Priority.ALWAYS);
        return row;
    }

    private Node cable(int thing) {
        Optional<CableRun> now = wiring.cableOutOf(thing);
        List<String> ids = new ArrayList<>(List.of(""));
        ids.addAll(wiring.ids(PresetKind.CABLES));
        TextField metres = number("wiring-metres", now.map(CableRun::metres).orElse(0.0), words.say("wiring.metres"),
            typed -> now.ifPresent(run -> change(() -> wiring.cable(thing, wiring.cable(run.cable().id(), typed.orElse(run.metres()))))));
        metres.setDisable(now.isEmpty());
        ComboBox<String> kind = choice("wiring-cable", ids, id -> id.isEmpty() ? words.say("wiring.no-cable") : name("cables", id, () -> wiring.presets().cable(id).name()),
            now.map(CableRun::cable).map(Cable::id).orElse(""), words.say("wiring.choose-cable"),
            id -> change(() -> wiring.cable(thing, wiring.cable(id, now.map(CableRun::metres).orElse(3.0)))));
        FlowPane row = new FlowPane(kind, metres, Parts.word(words.say("wiring.metres")));
        row.getStyleClass().add("buttons");
        return row;
    }

    /** Where the box stands, how it is set, and what can be done with it. */
    List<Node> box(int place, Runnable left, Runnable right, Runnable out) {
        PluggedBox plugged = wiring.boxes().get(place);
        Box box = plugged.box();
        List<Node> nodes = new ArrayList<>();
        nodes.add(Parts.text(name("boxes", box.id(), box::name), "sheet-title"));
        FlowPane buttons = new FlowPane(Parts.button("wiring-left", words.say("wiring.left"), left), Parts.button("wiring-right", words.say("wiring.right"), right),
            Parts.button("wiring-out", words.say("wiring.out"), out, "flat"));
        buttons.getStyleClass().add("buttons");
        buttons.getChildren().get(0).setDisable(place == 0);
        buttons.getChildren().get(1).setDisable(place == wiring.boxes().size() - 1);
        nodes.add(buttons);
        nodes.add(Parts.text(words.say("wiring.move-words"), "quiet"));
        GridPane form = form();
        line(form, words.say("wiring.box"), choice("wiring-box", wiring.ids(PresetKind.BOXES), id -> name("boxes", id, () -> wiring.presets().box(id).name()), box.id(),
            words.say("wiring.box"), id -> change(() -> wiring.set(place, PluggedBox.of(wiring.presets().box(id))))));
        if (turns(box.gain())) {
            line(form, gainWords(box.gain()), number("wiring-gain", plugged.gainDb(), words.say("wiring.gain"), typed -> typed.ifPresent(db ->
                set(place, new PluggedBox(box, box.gain().nearest(db), plugged.padDb(), plugged.powered(), plugged.groundLift())))));
        }
        if (!box.padsDb().isEmpty()) {
            List<String> pads = new ArrayList<>(List.of("0"));
            box.padsDb().forEach(pad -> pads.add(String.valueOf(pad)));
            line(form, words.say("wiring.pad"), choice("wiring-pad", pads, pad -> Double.parseDouble(pad) == 0 ? words.say("wiring.no-pad") : words.change(-Double.parseDouble(pad)),
                plugged.padDb() == 0 ? "0" : String.valueOf(plugged.padDb()), words.say("wiring.pad"),
                pad -> set(place, new PluggedBox(box, plugged.gainDb(), Double.parseDouble(pad), plugged.powered(), plugged.groundLift()))));
        }
        List<Power> powers = powers(box);
        if (!powers.isEmpty()) {
            line(form, words.say("wiring.power"), choice("wiring-power", powers, power -> words.say("wiring.power." + power.name().toLowerCase(Locale.ROOT).replace('_', '-')),
                plugged.powered(), words.say("wiring.power"), power -> set(place, new PluggedBox(box, plugged.gainDb(), plugged.padDb(), power, plugged.groundLift()))));
        }
        if (box.groundLift()) {
            CheckBox lift = new CheckBox(words.say("wiring.lift"));
            lift.setId("wiring-lift");
            lift.setWrapText(true);
            lift.setSelected(plugged.groundLift());
            lift.setOnAction(event -> set(place, new PluggedBox(box, plugged.gainDb(), plugged.padDb(), plugged.powered(), lift.isSelected())));
            form.add(lift, 0, form.getRowCount(), 2, 1);
        }
        nodes.add(form);
        return nodes;
    }

    private static List<Power> powers(Box box) {
        return switch (box.power()) {
            case BATTERY_OR_PHANTOM -> List.of(Power.BATTERY_OR_PHANTOM, Power.BATTERY, Power.PHANTOM, Power.NONE);
            case BATTERY -> List.of(Power.BATTERY, Power.NONE);
            case PHANTOM, MAINS, NONE -> List.of();
        };
    }

    List<Node> pickup() {
        GridPane form = form();
        line(form, words.say("rig.part.pickup"), choice("wiring-pickup", wiring.ids(PresetKind.PICKUPS), id -> name("pickups", id, () -> wiring.presets().pickup(id).name()),
            wiring.connection().pickup().id(), words.say("rig.part.pickup"), id -> change(() -> wiring.pickup(id))));
        return List.of(Parts.text(words.say("wiring.pickup-words"), "sheet-title"), form);
    }

    List<Node> input() {
        PluggedInput plugged = wiring.connection().main().input();
        GridPane form = form();
        line(form, words.say("rig.part.input"), choice("wiring-input", wiring.ids(PresetKind.INPUTS), id -> name("inputs", id, () -> wiring.presets().input(id).name()),
            plugged.input().id(), words.say("rig.part.input"),
            id -> change(() -> wiring.input(new PluggedInput(wiring.presets().input(id), OptionalDouble.empty(), false)))));
        if (turns(plugged.input().gain())) {
            TextField gain = number("wiring-input-gain", plugged.gainDb().orElse(Double.NaN), words.say("wiring.gain"), typed -> change(() -> wiring.input(new PluggedInput(plugged.input(),
                typed.isPresent() ? OptionalDouble.of(plugged.input().gain().nearest(typed.getAsDouble())) : OptionalDouble.empty(), plugged.phantom()))));
            gain.setPromptText(words.say("wiring.not-known"));
            line(form, gainWords(plugged.input().gain()), gain);
        }
        if (plugged.input().phantomVolts() > 0) {
            CheckBox phantom = new CheckBox(words.say("wiring.phantom-on"));
            phantom.setId("wiring-phantom");
            phantom.setSelected(plugged.phantom());
            phantom.setOnAction(event -> change(() -> wiring.input(new PluggedInput(plugged.input(), plugged.gainDb(), phantom.isSelected()))));
            form.add(phantom, 0, form.getRowCount(), 2, 1);
        }
        return List.of(Parts.text(words.say("wiring.input-words"), "sheet-title"), form);
    }

    private void set(int place, PluggedBox plugged) {
        change(() -> wiring.set(place, plugged));
    }

    private void change(Runnable change) {
        change.run();
        changed.run();
    }

    private String gainWords(GainRange range) {
        return words.say("wiring.gain-range", words.shortNumber(range.leastDb(), 0), words.shortNumber(range.mostDb(), 0));
    }

    private static boolean turns(GainRange range) {
        return range.mostDb() > range.leastDb();
    }

    private String name(String kind, String id, Supplier<String> own) {
        String key = "preset." + kind + "." + id;
        return words.has(key) ? words.say(key) : own.get();
    }

    private static GridPane form() {
        GridPane form = new GridPane();
        form.getStyleClass().add("form");
        return form;
    }

    private static void line(GridPane form, String name, Node box) {
        int row = form.getRowCount();
        form.add(Parts.word(name), 0, row);
        form.add(box, 1, row);
        GridPane.setHgrow(box, Priority.ALWAYS);
    }

    private <T> ComboBox<T> choice(String id, List<T> all, Function<T, String> name, T now, String accessible, Consumer<T> chosen) {
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
    private TextField number(String id, double now, String accessible, Consumer<OptionalDouble> typed) {
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
