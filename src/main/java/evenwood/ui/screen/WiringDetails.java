package evenwood.ui.screen;

import evenwood.rig.Cable;
import evenwood.rig.CableRun;
import evenwood.rig.PluggedInput;
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
    private final WiringFields fields;
    private final BoxDetails box;
    private final Runnable changed;

    /** @param changed something of the chain was changed */
    WiringDetails(Surroundings around, Runnable changed) {
        this.around = around;
        words = around.words();
        wiring = around.rig().wiring();
        this.changed = changed;
        fields = new WiringFields(around);
        box = new BoxDetails(around, fields, changed);
    }

    List<Node> box(int place, Runnable left, Runnable right, Runnable out) {
        return box.of(place, left, right, out);
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
        GridPane figures = WiringFields.form();
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
        TextField metres = fields.number("wiring-metres", now.map(CableRun::metres).orElse(0.0), words.say("wiring.metres"),
            typed -> now.ifPresent(run -> change(() -> wiring.cable(thing, wiring.cable(run.cable().id(), typed.orElse(run.metres()))))));
        metres.setDisable(now.isEmpty());
        ComboBox<String> kind = fields.choice("wiring-cable", ids, id -> id.isEmpty() ? words.say("wiring.no-cable") : fields.name(PresetKind.CABLES, id),
            now.map(CableRun::cable).map(Cable::id).orElse(""), words.say("wiring.choose-cable"),
            id -> change(() -> wiring.cable(thing, wiring.cable(id, now.map(CableRun::metres).orElse(3.0)))));
        FlowPane row = new FlowPane(kind, metres, Parts.word(words.say("wiring.metres")));
        row.getStyleClass().add("buttons");
        return row;
    }

    List<Node> pickup() {
        GridPane form = WiringFields.form();
        WiringFields.line(form, words.say("rig.part.pickup"), fields.presets("wiring-pickup", PresetKind.PICKUPS, wiring.connection().pickup().id(), words.say("rig.part.pickup"), id -> change(() -> wiring.pickup(id))));
        return List.of(Parts.text(words.say("wiring.pickup-words"), "sheet-title"), form);
    }

    List<Node> input() {
        PluggedInput plugged = wiring.connection().main().input();
        GridPane form = WiringFields.form();
        WiringFields.line(form, words.say("rig.part.input"), fields.presets("wiring-input", PresetKind.INPUTS, plugged.input().id(), words.say("rig.part.input"),
            id -> change(() -> wiring.input(new PluggedInput(wiring.presets().input(id), OptionalDouble.empty(), false)))));
        if (WiringFields.turns(plugged.input().gain())) {
            TextField gain = fields.number("wiring-input-gain", plugged.gainDb().orElse(Double.NaN), words.say("wiring.gain"), typed -> change(() -> wiring.input(new PluggedInput(plugged.input(),
                typed.isPresent() ? OptionalDouble.of(plugged.input().gain().nearest(typed.getAsDouble())) : OptionalDouble.empty(), plugged.phantom()))));
            gain.setPromptText(words.say("wiring.not-known"));
            WiringFields.line(form, fields.gainWords(plugged.input().gain()), gain);
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

    private void change(Runnable change) {
        change.run();
        changed.run();
    }
}
