package evenwood.ui.model;

import evenwood.rig.Control;
import evenwood.rig.Setting;

/** Where the controls of every set stood last. */
final class RememberedPositions {
    private final Choices choices;

    RememberedPositions(Choices choices) {
        this.choices = choices;
    }

    /** As gear stands when nobody touched it, where nothing is remembered. */
    Setting of(String setId, Control control) {
        Setting setting = Setting.neutral(control);
        String memory = memory(setId, control);
        if (control.gain().isPresent()) {
            setting = setting.withGain(choices.number(memory + ".gain", setting.gain().getAsDouble()));
        }
        if (control.frequency().isPresent()) {
            setting = setting.withFrequency(choices.number(memory + ".frequency", setting.frequency().getAsDouble()));
        }
        return setting.switched(choices.number(memory + ".on", setting.on() ? 1 : 0) > 0);
    }

    void keep(String setId, Setting setting) {
        String memory = memory(setId, setting.control());
        setting.gain().ifPresent(position -> choices.put(memory + ".gain", position));
        setting.frequency().ifPresent(position -> choices.put(memory + ".frequency", position));
        choices.put(memory + ".on", setting.on() ? 1 : 0);
    }

    private static String memory(String setId, Control control) {
        return "position." + setId + "." + control.name().replace(' ', '_');
    }
}
