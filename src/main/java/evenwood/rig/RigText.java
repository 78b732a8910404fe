package evenwood.rig;

import java.nio.file.Path;
import java.util.stream.Collectors;

/**
 * A rig as the text of a rig file, and back with {@link ConnectionText#readRig}.
 *
 * <p>What is written reads back the same ({@code RigTextTest}).
 */
public final class RigText {
    private RigText() { }

    public static String of(Rig rig) {
        StringBuilder text = new StringBuilder("name: ").append(quoted(rig.name())).append('\n')
            .append("instrument: ").append(rig.instrument().id()).append('\n').append("tap: ").append(YamlFields.word(rig.tap())).append('\n')
            .append("controls: ").append(rig.controls().id()).append('\n');
        if (!rig.settings().isEmpty()) {
            text.append("positions:\n");
            rig.settings().forEach(setting -> text.append("  ").append(quoted(setting.control().name())).append(": ").append(position(setting)).append('\n'));
        }
        rig.connection().ifPresent(connection -> text.append("wiring:\n")
            .append(ConnectionText.of(connection).lines().map(line -> "  " + line + "\n").collect(Collectors.joining())));
        return text.toString();
    }

    /** Writes it as a rig file. @throws PresetProblem when it cannot be written */
    public static void write(Rig rig, Path file) {
        WholeFile.write(file, "# Written by the window, anew whenever something changes there.\n" + of(rig));
    }

    /** Just {@code on} or {@code off} where there is no dial. */
    private static String position(Setting setting) {
        return setting.gain().isEmpty() && setting.frequency().isEmpty() ? setting.on() ? "on" : "off" : place(setting);
    }

    static String place(Setting setting) {
        return "{ on: " + setting.on() + (setting.gain().isPresent() ? ", gain: " + setting.gain().getAsDouble() : "")
            + (setting.frequency().isPresent() ? ", frequency: " + setting.frequency().getAsDouble() : "") + " }";
    }

    static String quoted(String name) {
        return '"' + name.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }
}
