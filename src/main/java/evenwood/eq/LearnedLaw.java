package evenwood.eq;

import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A control as it was heard on this rig.
 *
 * <p>How: between two learned positions the curves in decibels are mixed as the control's nominal marking runs between them;
 * beyond the outermost, and for a switch that was not learned, what the nominal control would do from the nearest one is added.
 * A dial of frequencies moves the curve along. Our choice: the response of a peak or shelf in dB is nearly proportional to its
 * gain (reference §6.3).
 * <p>Limits: at positions learned by sweep within 0.2 dB of a circuit (LearningEvaluation); between positions as good as the marking.
 */
public final class LearnedLaw implements ControlLaw {
    private static final NominalLaw NOMINAL = new NominalLaw();
    private static final int POINTS = 5;

    private final List<LearnedControl.Curve> curves;

    public LearnedLaw(LearnedControl learned) {
        curves = learned.curves();
    }

    @Override
    public double[] bandsDb(Setting setting, BandResponse response) {
        LearnedControl.Curve low = nearest(curves, setting, -1).orElse(null);
        LearnedControl.Curve high = nearest(curves, setting, 1).orElse(null);
        if (low == null || high == null) {
            LearnedControl.Curve end = low != null ? low : high != null ? high : anySwitched(setting);
            double[] db = bands(end, setting, response);
            double[] there = NOMINAL.bandsDb(setting, response);
            double[] known = NOMINAL.bandsDb(moved(end.at(), setting), response);
            for (int i = 0; i < db.length; i++) {
                db[i] += there[i] - known[i];
            }
            return db;
        }
        double[] lower = bands(low, setting, response);
        double[] upper = bands(high, setting, response);
        double part = part(low.at(), setting, high.at());
        for (int i = 0; i < lower.length; i++) {
            lower[i] = (1 - part) * lower[i] + part * upper[i];
        }
        return lower;
    }

    @Override
    public EqChain change(Setting from, Setting to, BandResponse response) {
        double[] before = bandsDb(from, response);
        double[] after = bandsDb(to, response);
        double mean = 0;
        for (int i = 0; i < after.length; i++) {
            after[i] -= before[i];
            mean += after[i] / after.length;
        }
        if (!from.control().shapesTone()) {
            return new EqChain(mean, List.of());
        }
        return from.equals(to) ? EqChain.FLAT : CurveFit.chain(after, response);
    }

    /** The learned curve closest to a setting from below (−1) or above (1), itself included. */
    static Optional<LearnedControl.Curve> nearest(List<LearnedControl.Curve> curves, Setting setting, int side) {
        return curves.stream().filter(curve -> curve.at().on() == setting.on())
            .filter(curve -> side * (place(curve.at()) - place(setting)) >= -1e-9)
            .min(Comparator.comparingDouble(curve -> Math.abs(place(curve.at()) - place(setting))));
    }

    private LearnedControl.Curve anySwitched(Setting setting) {
        return curves.stream().min(Comparator.comparingDouble(curve -> Math.abs(place(curve.at()) - place(setting)))).orElseThrow();
    }

    /** The dial that the curves are spread along. */
    private static double place(Setting setting) {
        return setting.gain().isPresent() ? setting.gain().getAsDouble() : setting.frequency().isPresent() ? Math.log(setting.frequencyHz()) : 0;
    }

    private static double part(Setting low, Setting setting, Setting high) {
        double lowDb = nominal(low);
        double highDb = nominal(high);
        boolean flat = Math.abs(highDb - lowDb) < 1e-9;
        double part = flat ? (place(setting) - place(low)) / (place(high) - place(low)) : (nominal(setting) - lowDb) / (highDb - lowDb);
        return Double.isFinite(part) ? part : 0;
    }

    private static double nominal(Setting setting) {
        return setting.gain().isPresent() ? setting.gainDb() : place(setting);
    }

    /** What a learned setting would be with the other's frequency dial: the curve has been moved along with it. */
    private static Setting moved(Setting learned, Setting wanted) {
        return learned.frequency().isPresent() && learned.gain().isPresent() ? learned.withFrequency(wanted.frequency().getAsDouble()) : learned;
    }

    /** As an even spectrum within the band would be changed, like {@link BandResponse}. */
    private static double[] bands(LearnedControl.Curve curve, Setting wanted, BandResponse response) {
        Control control = wanted.control();
        double shift = control.frequency().isPresent() && control.gain().isPresent() ? curve.at().frequencyHz() / wanted.frequencyHz() : 1;
        double[] db = new double[response.bands().size()];
        for (int i = 0; i < db.length; i++) {
            ThirdOctave band = response.bands().get(i);
            double power = 0;
            for (int point = 0; point < POINTS; point++) {
                double hz = band.lowerHz() * Math.pow(band.upperHz() / band.lowerHz(), (point + 0.5) / POINTS);
                power += Math.pow(10, curve.db(hz * shift) / 10);
            }
            db[i] = 10 * Math.log10(Math.max(1e-20, power / POINTS));
        }
        return db;
    }
}
