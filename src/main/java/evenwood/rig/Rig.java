package evenwood.rig;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a player owns and how it stands: instrument, controls with their positions, and where we listen.
 *
 * @param name       for people
 * @param instrument what is played
 * @param tap        where we listen
 * @param controls   the set of controls, in the order sound passes them
 * @param settings   one for each control, in the same order
 * @param connection how it is plugged in, when the player said so
 */
public record Rig(String name, Instrument instrument, Tap tap, ControlSet controls, List<Setting> settings,
                  Optional<Connection> connection) {
    public Rig {
        settings = List.copyOf(settings);
    }

    /** A rig of which nobody said how it is plugged in. */
    public Rig(String name, Instrument instrument, Tap tap, ControlSet controls, List<Setting> settings) {
        this(name, instrument, tap, controls, settings, Optional.empty());
    }

    public Optional<Setting> setting(String controlName) {
        return settings.stream().filter(setting -> setting.control().name().equalsIgnoreCase(controlName)).findFirst();
    }

    /** The same rig with other positions. */
    public Rig with(List<Setting> newSettings) {
        return new Rig(name, instrument, tap, controls, newSettings, connection);
    }

    /**
     * Reads a rig file.
     *
     * @throws PresetProblem naming file, line and field
     */
    public static Rig read(Path file, Presets presets) {
        try {
            return read(YamlFields.of(file.toString(), Files.readString(file)), presets);
        } catch (NoSuchFileException missing) {
            throw new PresetProblem("rig: " + file + " does not exist; check the spelling");
        } catch (IOException problem) {
            throw new PresetProblem("rig: " + file + " cannot be read as text (" + problem.getMessage() + "); check the file and its rights");
        }
    }

    static Rig read(YamlFields fields, Presets presets) {
        ControlSet set = presets.controls(fields.text("controls"));
        Rig rig = new Rig(fields.text("name"), presets.instrument(fields.text("instrument")), fields.choice("tap", Tap.class), set,
            settings(fields, set),
            fields.has("wiring") ? Optional.of(ConnectionReading.read(fields.part("wiring"), presets)) : Optional.empty());
        fields.nothingElse();
        return rig;
    }

    private static List<Setting> settings(YamlFields fields, ControlSet set) {
        List<Setting> settings = new ArrayList<>();
        if (!fields.has("positions")) {
            set.controls().forEach(control -> settings.add(Setting.neutral(control)));
            return settings;
        }
        YamlFields positions = fields.part("positions");
        set.controls().forEach(control -> settings.add(Setting.read(control, positions)));
        positions.nothingElse();
        return settings;
    }
}
