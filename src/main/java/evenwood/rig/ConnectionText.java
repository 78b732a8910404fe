package evenwood.rig;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A connection as the text of a rig file's {@code wiring} part, and back.
 *
 * <p>What is written reads back the same ({@code ConnectionTextTest}).
 */
public final class ConnectionText {
    private ConnectionText() { }

    public static String of(Connection connection) {
        StringBuilder text = new StringBuilder("pickup: ").append(connection.pickup().id()).append('\n').append(line(connection.main(), ""));
        connection.thru().ifPresent(way -> text.append("thru:\n").append(line(way, "  ")));
        connection.sameOutlet().ifPresent(same -> text.append("sameOutlet: ").append(same).append('\n'));
        Gear owned = connection.owned();
        if (!owned.equals(Gear.NOTHING)) {
            text.append("owned: { boxes: ").append(ids(owned.boxes().stream().map(Box::id).toList())).append(", cables: ")
                .append(ids(owned.cables().stream().map(Cable::id).toList())).append(", inputs: ")
                .append(ids(owned.inputs().stream().map(Input::id).toList())).append(" }\n");
        }
        return text.toString();
    }

    /** @throws PresetProblem naming what is wrong in it */
    public static Connection read(String text, Presets presets) {
        return ConnectionReading.read(YamlFields.of("wiring", text), presets);
    }

    /** A whole rig file. @throws PresetProblem naming what is wrong in it */
    public static Rig readRig(String text, Presets presets) {
        return Rig.read(YamlFields.of("rig", text), presets);
    }

    private static String line(Line line, String indent) {
        String links = line.links().stream().map(ConnectionText::link).collect(Collectors.joining(", "));
        PluggedInput input = line.input();
        return indent + "chain: [" + links + "]\n" + indent + "input: { id: " + input.input().id()
            + (input.gainDb().isPresent() ? ", gainDb: " + input.gainDb().getAsDouble() : "") + (input.phantom() ? ", phantom: true" : "") + " }\n";
    }

    private static String link(Link link) {
        if (link instanceof CableRun run) {
            return "{ cable: " + run.cable().id() + ", metres: " + run.metres() + " }";
        }
        PluggedBox plugged = (PluggedBox) link;
        return "{ box: " + plugged.box().id() + ", gainDb: " + plugged.gainDb() + (plugged.padDb() == 0 ? "" : ", padDb: " + plugged.padDb())
            + ", power: " + plugged.powered().name().toLowerCase(Locale.ROOT).replace('_', '-') + (plugged.groundLift() ? ", groundLift: true" : "") + " }";
    }

    private static String ids(List<String> ids) {
        return "[" + String.join(", ", ids) + "]";
    }
}
