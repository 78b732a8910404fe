package evenwood.rig;

import java.util.Locale;

/** What presets there are; each kind has its folder under {@code presets/} and its JSON Schema. */
public enum PresetKind {
    INSTRUMENTS, CONTROLS, PICKUPS, CABLES, BOXES, INPUTS, HUNTS;

    /** Name of the folder and word for the player. */
    public String folder() {
        return name().toLowerCase(Locale.ROOT);
    }
}
