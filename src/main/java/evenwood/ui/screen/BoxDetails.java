package evenwood.ui.screen;

import evenwood.rig.Box;
import evenwood.rig.PluggedBox;
import evenwood.rig.Power;
import evenwood.rig.PresetKind;
import evenwood.ui.model.ChainPicture;
import evenwood.ui.model.WiringModel;
import evenwood.ui.model.Words;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import javafx.scene.Node;
import javafx.scene.control.CheckBox;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.GridPane;

/** A box of the chain: where it stands, how its knobs and switches are set, and what can be done with it. */
final class BoxDetails {
    private final Words words;
    private final WiringModel wiring;
    private final WiringFields fields;
    private final Runnable changed;

    BoxDetails(Surroundings around, WiringFields fields, Runnable changed) {
        words = around.words();
        wiring = around.rig().wiring();
        this.fields = fields;
        this.changed = changed;
    }

    /** Where the box stands, how it is set, and what can be done with it. */
    List<Node> of(int place, Runnable left, Runnable right, Runnable out) {
        PluggedBox plugged = wiring.boxes().get(place);
        Box box = plugged.box();
        List<Node> nodes = new ArrayList<>();
        nodes.add(Parts.text(ChainPicture.titled(fields.name(PresetKind.BOXES, box.id())), "sheet-title"));
        FlowPane buttons = new FlowPane(Parts.button("wiring-left", words.say("wiring.left"), left), Parts.button("wiring-right", words.say("wiring.right"), right),
            Parts.button("wiring-out", words.say("wiring.out"), out, "flat"));
        buttons.getStyleClass().add("buttons");
        buttons.getChildren().get(0).setDisable(place == 0);
        buttons.getChildren().get(1).setDisable(place == wiring.boxes().size() - 1);
        nodes.add(buttons);
        nodes.add(Parts.text(words.say("wiring.move-words"), "quiet"));
        GridPane form = WiringFields.form();
        WiringFields.line(form, words.say("wiring.box"), fields.presets("wiring-box", PresetKind.BOXES, box.id(), words.say("wiring.box"),
            id -> set(place, PluggedBox.of(wiring.presets().box(id)))));
        if (WiringFields.turns(box.gain())) {
            WiringFields.line(form, fields.gainWords(box.gain()), fields.number("wiring-gain", plugged.gainDb(), words.say("wiring.gain"), typed -> typed.ifPresent(db ->
                set(place, new PluggedBox(box, box.gain().nearest(db), plugged.padDb(), plugged.powered(), plugged.groundLift())))));
        }
        if (!box.padsDb().isEmpty()) {
            List<String> pads = new ArrayList<>(List.of("0"));
            box.padsDb().forEach(pad -> pads.add(String.valueOf(pad)));
            WiringFields.line(form, words.say("wiring.pad"), fields.choice("wiring-pad", pads, pad -> Double.parseDouble(pad) == 0 ? words.say("wiring.no-pad") : words.change(-Double.parseDouble(pad)),
                plugged.padDb() == 0 ? "0" : String.valueOf(plugged.padDb()), words.say("wiring.pad"),
                pad -> set(place, new PluggedBox(box, plugged.gainDb(), Double.parseDouble(pad), plugged.powered(), plugged.groundLift()))));
        }
        List<Power> powers = powers(box);
        if (!powers.isEmpty()) {
            WiringFields.line(form, words.say("wiring.power"), fields.choice("wiring-power", powers, power -> words.say("wiring.power." + power.name().toLowerCase(Locale.ROOT).replace('_', '-')),
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

    private void set(int place, PluggedBox plugged) {
        wiring.set(place, plugged);
        changed.run();
    }
}
