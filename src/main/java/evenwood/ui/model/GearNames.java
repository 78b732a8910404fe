package evenwood.ui.model;

import evenwood.judge.Statement;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.GainRange;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.wiring.Device;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What the things of a chain are called in the player's language, also where a sentence names them. */
final class GearNames {
    private final Words words;

    GearNames(Words words) {
        this.words = words;
    }

    String of(Device device) {
        return device instanceof Device.Source source ? name("pickups", source.pickup().id(), source.pickup().name())
            : device instanceof Device.Between between ? name("boxes", between.box().id(), between.box().name())
            : name("inputs", ((Device.End) device).input().id(), device.name());
    }

    /** "3 m instrument cable". */
    String of(CableRun run) {
        return words.say("wiring.cable", words.shortNumber(run.metres(), 2), name("cables", run.cable().id(), run.cable().name()));
    }

    /** How it stands: gain, pad, power, lift. */
    List<String> standing(Device device) {
        return device instanceof Device.Between between ? standing(between.plugged())
            : device instanceof Device.End end ? standing(end.plugged()) : List.of();
    }

    private List<String> standing(PluggedBox plugged) {
        List<String> set = new ArrayList<>();
        if (turns(plugged.box().gain())) {
            set.add(words.say("wiring.gain-at", words.shortNumber(plugged.gainDb(), 1)));
        }
        if (plugged.padDb() > 0) {
            set.add(words.say("wiring.pad-at", words.shortNumber(-plugged.padDb(), 0)));
        }
        if (plugged.box().power() != Power.NONE) {
            set.add(power(plugged.powered()));
        }
        if (plugged.groundLift()) {
            set.add(words.say("wiring.lifted"));
        }
        return set;
    }

    private List<String> standing(PluggedInput plugged) {
        List<String> set = new ArrayList<>();
        plugged.gainDb().ifPresent(gain -> set.add(words.say("wiring.gain-at", words.shortNumber(gain, 1))));
        if (plugged.input().phantomVolts() > 0) {
            set.add(words.say(plugged.phantom() ? "wiring.phantom-on" : "wiring.phantom-off"));
        }
        return set;
    }

    String power(Power power) {
        return words.say("wiring.power." + power.name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }

    static boolean turns(GainRange range) {
        return range.mostDb() > range.leastDb();
    }

    /** The same sentence with the things in it called by their names in the player's language. */
    Statement named(Statement statement, Connection connection) {
        Map<Object, Object> names = new HashMap<>();
        names.put(connection.pickup().name(), of(new Device.Source(connection.pickup())));
        collect(connection.main(), names);
        connection.thru().ifPresent(way -> collect(way, names));
        return new Statement(statement.key(), statement.figures().stream().map(figure -> names.getOrDefault(figure, figure)).toList());
    }

    private void collect(Line line, Map<Object, Object> names) {
        for (Link link : line.links()) {
            if (link instanceof CableRun run) {
                names.put(run.cable().name(), name("cables", run.cable().id(), run.cable().name()));
            } else {
                Device.Between box = new Device.Between((PluggedBox) link);
                names.put(box.name(), of(box));
            }
        }
        names.put(line.input().input().name(), of(new Device.End(line.input())));
    }

    String name(String kind, String id, String own) {
        return words.sayOr("preset." + kind + "." + id, own);
    }
}
