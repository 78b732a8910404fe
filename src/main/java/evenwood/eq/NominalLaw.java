package evenwood.eq;

import evenwood.rig.Control;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A control as its preset says: the cookbook's filter of that kind, frequency and width.
 *
 * <p>How to undo a setting: a peak or shelf of the opposite gain is its exact inverse (audio EQ cookbook). What a high-pass
 * or full notch took away cannot be had back; as much of it is raised as a fit over the bands can ({@link CurveFit}).
 */
public final class NominalLaw implements ControlLaw {
    @Override
    public double[] bandsDb(Setting setting, BandResponse response) {
        double[] db = ControlEffect.filter(setting).map(response::db).orElseGet(() -> new double[response.bands().size()]);
        double gainDb = ControlEffect.gainDb(setting);
        for (int i = 0; i < db.length; i++) {
            db[i] += gainDb;
        }
        return db;
    }

    @Override
    public EqChain change(Setting from, Setting to, BandResponse response) {
        Control control = from.control();
        if (!control.shapesTone()) {
            return new EqChain(ControlEffect.gainDb(to) - ControlEffect.gainDb(from), List.of());
        }
        Optional<EqFilter> old = ControlEffect.filter(from);
        Optional<EqFilter> wanted = ControlEffect.filter(to);
        if (old.equals(wanted)) {
            return EqChain.FLAT;
        }
        if (old.isPresent() && !hasInverse(old.get())) {
            return CurveFit.chain(difference(bandsDb(to, response), bandsDb(from, response)), response);
        }
        List<EqFilter> filters = new ArrayList<>();
        old.filter(filter -> filter.gainDb() != 0).ifPresent(filter -> filters.add(filter.withGainDb(-filter.gainDb())));
        wanted.filter(filter -> !hasInverse(filter) || filter.gainDb() != 0).ifPresent(filters::add);
        return new EqChain(0, filters);
    }

    private static boolean hasInverse(EqFilter filter) {
        return filter.kind() == FilterKind.PEAK || filter.kind() == FilterKind.LOW_SHELF || filter.kind() == FilterKind.HIGH_SHELF;
    }

    private static double[] difference(double[] a, double[] b) {
        double[] difference = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            difference[i] = a[i] - b[i];
        }
        return difference;
    }
}
