package evenwood.eq;

import evenwood.rig.Rig;

/**
 * A rig as it stands, with what is known of its controls.
 *
 * @param rig  instrument, tap, controls and their positions
 * @param laws what each control does: learned where it was learned, nominal otherwise
 */
public record RigInUse(Rig rig, ControlLaws laws) {
    public static RigInUse nominal(Rig rig) {
        return new RigInUse(rig, ControlLaws.NOMINAL);
    }
}
