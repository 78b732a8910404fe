package evenwood.eq;

import evenwood.rig.Control;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** Which law each control of a rig follows: the learned one where there is one, the nominal otherwise. */
public final class ControlLaws {
    public static final ControlLaws NOMINAL = new ControlLaws(Map.of());

    private final Map<String, ControlLaw> learned = new TreeMap<>();

    /** @param learned by control name, in any case */
    public ControlLaws(Map<String, ? extends ControlLaw> learned) {
        learned.forEach((name, law) -> this.learned.put(name.toLowerCase(Locale.ROOT), law));
    }

    public ControlLaw of(Control control) {
        ControlLaw law = learned.get(control.name().toLowerCase(Locale.ROOT));
        return law == null ? new NominalLaw() : law;
    }
}
