package evenwood.wiring;

import evenwood.rig.Box;
import evenwood.rig.CableRun;
import evenwood.rig.Connection;
import evenwood.rig.Gear;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.PluggedBox;
import evenwood.rig.PluggedInput;
import evenwood.rig.Power;
import evenwood.rig.PresetKind;
import evenwood.rig.Presets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Connections for tests, written in one line: {@code piezo-bridge > instrument-cable 5 > active-di power=phantom lift >
 * microphone-cable 20 > mixer-microphone gain=30 phantom / instrument-cable 3 > amp-instrument}; after the slash the thru line;
 * {@code @same} or {@code @different} says how the mains plugs stand.
 */
final class Plugged {
    static final Presets PRESETS = new Presets(Path.of("nowhere"));

    private Plugged() { }

    static Connection in(String text) {
        return in(text, Gear.NOTHING);
    }

    static Connection in(String text, Gear owned) {
        Optional<Boolean> outlet = text.contains("@same") ? Optional.of(true) : text.contains("@different") ? Optional.of(false) : Optional.empty();
        String[] ways = text.replaceAll("@\\w+", "").split("/");
        String[] main = ways[0].split(">");
        return new Connection(PRESETS.pickup(main[0].trim()), line(main, 1), ways.length > 1 ? Optional.of(line(ways[1].split(">"), 0)) : Optional.empty(),
            outlet, owned);
    }

    private static Line line(String[] items, int from) {
        List<Link> links = new ArrayList<>();
        for (int i = from; i < items.length - 1; i++) {
            links.add(link(items[i].trim().split(" +")));
        }
        String[] input = items[items.length - 1].trim().split(" +");
        return new Line(links, new PluggedInput(PRESETS.input(input[0]), value(input, "gain"), List.of(input).contains("phantom")));
    }

    private static Link link(String[] words) {
        if (PRESETS.ids(PresetKind.CABLES).contains(words[0])) {
            return new CableRun(PRESETS.cable(words[0]), Double.parseDouble(words[1]));
        }
        Box box = PRESETS.box(words[0]);
        Power power = box.power();
        for (String word : words) {
            if (word.startsWith("power=")) {
                power = Power.valueOf(word.substring(6).toUpperCase(Locale.ROOT));
            }
        }
        return new PluggedBox(box, value(words, "gain").orElse(box.gain().nearest(0)), value(words, "pad").orElse(0), power, List.of(words).contains("lift"));
    }

    private static OptionalDouble value(String[] words, String name) {
        for (String word : words) {
            if (word.startsWith(name + "=")) {
                return OptionalDouble.of(Double.parseDouble(word.substring(name.length() + 1)));
            }
        }
        return OptionalDouble.empty();
    }
}
