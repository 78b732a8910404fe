package evenwood.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Reads the {@code wiring} part of a rig file. */
final class ConnectionReading {
    private final Presets presets;

    private ConnectionReading(Presets presets) {
        this.presets = presets;
    }

    static Connection read(YamlFields fields, Presets presets) {
        ConnectionReading reading = new ConnectionReading(presets);
        Line main = reading.line(fields);
        Optional<Line> thru = fields.has("thru") ? Optional.of(reading.thru(fields, main)) : Optional.empty();
        Connection connection = new Connection(presets.pickup(fields.text("pickup")), main, thru,
            fields.has("sameOutlet") ? Optional.of(fields.flag("sameOutlet")) : Optional.empty(),
            fields.has("owned") ? reading.gear(fields.part("owned")) : Gear.NOTHING);
        fields.nothingElse();
        return connection;
    }

    private Line thru(YamlFields fields, Line main) {
        if (main.boxWithThru().isEmpty()) {
            throw fields.wrong("thru", "no box in the chain has a thru socket", "one such as passive-di is needed for a second way");
        }
        YamlFields part = fields.part("thru");
        Line line = line(part);
        part.nothingElse();
        return line;
    }

    private Line line(YamlFields fields) {
        List<Link> links = new ArrayList<>();
        for (YamlFields link : fields.parts("chain")) {
            links.add(link(link));
            link.nothingElse();
        }
        for (int i = 1; i < links.size(); i++) {
            if (links.get(i) instanceof CableRun && links.get(i - 1) instanceof CableRun) {
                throw fields.wrong("chain", "two cables in a row", "something must stand between them; add their lengths otherwise");
            }
        }
        return new Line(links, input(fields.part("input")));
    }

    private Link link(YamlFields fields) {
        if (fields.has("cable")) {
            return new CableRun(presets.cable(fields.text("cable")), fields.number("metres", 0, CableRun.LONGEST_METRES, "m"));
        }
        Box box = presets.box(fields.text("box"));
        double pad = fields.optionalNumber("padDb", 0, 60, "dB").orElse(0);
        if (pad != 0 && !box.padsDb().contains(pad)) {
            throw fields.wrong("padDb", String.valueOf(pad), "this box has " + (box.padsDb().isEmpty() ? "no pad" : box.padsDb()));
        }
        boolean lift = fields.flag("groundLift", false);
        if (lift && !box.groundLift()) {
            throw fields.wrong("groundLift", "true", "this box has no such switch");
        }
        return new PluggedBox(box, gain(fields, box.gain()).orElse(box.gain().nearest(0)), pad,
            fields.has("power") ? power(fields, box) : box.power(), lift);
    }

    private static Power power(YamlFields fields, Box box) {
        Power power = fields.choice("power", Power.class);
        boolean possible = power == Power.NONE || power == box.power() || box.power() == Power.BATTERY_OR_PHANTOM && power != Power.MAINS;
        if (!possible) {
            throw fields.wrong("power", fields.text("power"), "this box takes " + box.power().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
        }
        return power;
    }

    private PluggedInput input(YamlFields fields) {
        Input input = presets.input(fields.text("id"));
        boolean phantom = fields.flag("phantom", false);
        if (phantom && input.phantomVolts() == 0) {
            throw fields.wrong("phantom", "true", "this input has no phantom power");
        }
        PluggedInput plugged = new PluggedInput(input, gain(fields, input.gain()), phantom);
        fields.nothingElse();
        return plugged;
    }

    private static OptionalDouble gain(YamlFields fields, GainRange range) {
        return fields.optionalNumber("gainDb", range.leastDb(), range.mostDb(), "dB");
    }

    private Gear gear(YamlFields fields) {
        Gear gear = new Gear(texts(fields, "boxes").stream().map(presets::box).toList(),
            texts(fields, "cables").stream().map(presets::cable).toList(), texts(fields, "inputs").stream().map(presets::input).toList());
        fields.nothingElse();
        return gear;
    }

    private static List<String> texts(YamlFields fields, String field) {
        return fields.has(field) ? fields.texts(field) : List.of();
    }
}
