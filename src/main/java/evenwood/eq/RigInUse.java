package evenwood.eq;

import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * A rig as it stands, with what is known of its controls.
 *
 * @param rig  instrument, tap, controls and their positions
 * @param laws what each control does: learned where it was learned, nominal otherwise
 * @param cleanUpToDbfs the peak at the tap up to which sweeps found it clean as it stands, if they were made
 */
public record RigInUse(Rig rig, ControlLaws laws, OptionalDouble cleanUpToDbfs) {
    public static RigInUse nominal(Rig rig) {
        return new RigInUse(rig, ControlLaws.NOMINAL, OptionalDouble.empty());
    }

    public static RigInUse of(Rig rig, List<LearnedControl> learned) {
        Map<String, LearnedLaw> laws = learned.stream().collect(Collectors.toMap(LearnedControl::control, LearnedLaw::new));
        return new RigInUse(rig, new ControlLaws(laws), CleanLevel.of(rig, learned));
    }

    /** A rig file with what was learned beside it. */
    public static RigInUse read(Path file, Presets presets) {
        Rig rig = Rig.read(file, presets);
        return of(rig, LearnedFile.read(file, rig.controls()));
    }
}
