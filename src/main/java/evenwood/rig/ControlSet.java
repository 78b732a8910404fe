package evenwood.rig;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All controls of one piece of gear, in the order sound passes them.
 *
 * @param id       such as {@code amp-bass-mid-treble}
 * @param name     for people
 * @param controls no two of the same name
 * @param source   where ranges and corners are from, or how sure they are
 */
public record ControlSet(String id, String name, List<Control> controls, String source) {
    public ControlSet {
        controls = List.copyOf(controls);
    }

    public Optional<Control> control(String controlName) {
        return controls.stream().filter(control -> control.name().equalsIgnoreCase(controlName)).findFirst();
    }

    static ControlSet read(YamlFields fields) {
        ControlSet set = new ControlSet(fields.text("id"), fields.text("name"),
            fields.parts("controls").stream().map(Control::read).toList(), fields.text("source"));
        Set<String> names = new HashSet<>();
        for (Control control : set.controls) {
            if (!names.add(control.name().toLowerCase(java.util.Locale.ROOT))) {
                throw fields.wrong("controls", "two are named " + control.name(), "each needs a name of its own");
            }
        }
        fields.nothingElse();
        return set;
    }
}
