package evenwood.eq;

import evenwood.rig.LearnedControl;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * Up to which peak at the tap a rig stays clean as it stands, from the sweeps its controls were learned with.
 *
 * <p>How: gains say how hard the stages behind them are driven, so what sweeps told at their positions counts first; only without
 * such sweeps those through tone controls count. Between two learned positions the lower level holds, outside them nothing is
 * known. Source: our choice, on the safe side.
 * <p>Limits: holds while the recorder's gain stands as it did for the sweeps.
 */
final class CleanLevel {
    private CleanLevel() { }

    static OptionalDouble of(Rig rig, List<LearnedControl> learned) {
        OptionalDouble gains = least(rig, learned, false);
        return gains.isPresent() ? gains : least(rig, learned, true);
    }

    private static OptionalDouble least(Rig rig, List<LearnedControl> learned, boolean tone) {
        return learned.stream().flatMapToDouble(control -> rig.setting(control.control()).filter(setting -> setting.control().shapesTone() == tone)
            .map(setting -> at(setting, control.curves())).orElse(DoubleStream.empty())).min();
    }

    private static DoubleStream at(Setting setting, List<LearnedControl.Curve> curves) {
        Optional<LearnedControl.Curve> below = LearnedLaw.nearest(curves, setting, -1);
        Optional<LearnedControl.Curve> above = LearnedLaw.nearest(curves, setting, 1);
        return below.isEmpty() || above.isEmpty() ? DoubleStream.empty()
            : Stream.of(below.get(), above.get()).flatMapToDouble(curve -> curve.cleanUpToDbfs().stream());
    }
}
