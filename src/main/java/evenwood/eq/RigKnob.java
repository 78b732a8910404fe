package evenwood.eq;

import evenwood.rig.Control;
import evenwood.rig.Dial;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A tone control of a rig, within its stops, at the positions a hand can set. */
final class RigKnob implements Knob {
    /** A sweep with many more positions is first looked at every so often; the optimiser finds the rest. */
    private static final int COARSE_FREQUENCIES = 24;
    private static final int COARSE_GAINS = 12;

    private final Setting present;
    private final Optional<Dial> gain;
    private final Optional<Dial> frequency;
    private final boolean on;
    private final ControlLaw law;
    private final BandResponse response;
    private final double[] presentDb;
    private final Map<Setting, double[]> known = new HashMap<>();

    private RigKnob(Setting present, boolean on, ControlLaw law, BandResponse response) {
        this.present = present;
        this.on = on;
        this.law = law;
        this.response = response;
        gain = on ? present.control().gain() : Optional.empty();
        frequency = on ? present.control().frequency() : Optional.empty();
        presentDb = law.bandsDb(present, response);
    }

    /** What can be done with one control: turn it, switch it on, or switch it off. Nothing for gain and volume. */
    static List<Knob> of(Setting present, ControlLaw law, BandResponse response) {
        Control control = present.control();
        List<Knob> knobs = new ArrayList<>();
        if (!control.shapesTone()) {
            return knobs;
        }
        if (control.gain().isPresent() || control.frequency().isPresent() || !present.on()) {
            knobs.add(new RigKnob(present, true, law, response));
        }
        if (control.switched() && present.on()) {
            knobs.add(new RigKnob(present, false, law, response));
        }
        return knobs;
    }

    @Override
    public Object control() {
        return present.control();
    }

    @Override
    public double[] least() {
        return place(gain.map(Dial::least), frequency.map(dial -> Math.min(log2(dial.hz(dial.least())), log2(dial.hz(dial.most())))));
    }

    @Override
    public double[] most() {
        return place(gain.map(Dial::most), frequency.map(dial -> Math.max(log2(dial.hz(dial.least())), log2(dial.hz(dial.most())))));
    }

    @Override
    public List<double[]> starts() {
        List<Double> gains = gain.map(dial -> frequency.isPresent() ? spread(dial.positions(), COARSE_GAINS) : dial.positions()).orElse(List.of());
        List<Double> octaves = frequency.map(RigKnob::coarseOctaves).orElse(List.of());
        List<double[]> starts = new ArrayList<>();
        if (gains.isEmpty() && octaves.isEmpty()) {
            starts.add(new double[0]);
        } else if (octaves.isEmpty()) {
            gains.forEach(position -> starts.add(new double[] {position}));
        } else if (gains.isEmpty()) {
            octaves.forEach(octave -> starts.add(new double[] {octave}));
        } else {
            gains.forEach(position -> octaves.forEach(octave -> starts.add(new double[] {position, octave})));
        }
        return starts;
    }

    @Override
    public double[] effectDb(double[] place) {
        Setting setting = setting(place);
        double[] there = known.get(setting);
        if (there == null) {
            there = law.bandsDb(setting, response);
            for (int i = 0; i < there.length; i++) {
                there[i] -= presentDb[i];
            }
            known.put(setting, there);
        }
        return there;
    }

    @Override
    public double[] settable(double[] place) {
        double[] settable = place.clone();
        gain.ifPresent(dial -> settable[0] = dial.settable(place[0]));
        frequency.ifPresent(dial -> settable[place.length - 1] = log2(dial.hz(dial.settable(dial.positionOfHz(Math.pow(2, place[place.length - 1]))))));
        return settable;
    }

    @Override
    public List<double[]> nextTo(double[] place) {
        List<double[]> next = new ArrayList<>();
        for (int step : new int[] {-2, -1, 1, 2}) {
            gain.ifPresent(dial -> {
                double[] moved = place.clone();
                moved[0] = dial.settable(place[0] + step * dial.step());
                next.add(moved);
            });
            frequency.ifPresent(dial -> {
                double[] moved = place.clone();
                int at = place.length - 1;
                moved[at] = log2(dial.hz(dial.settable(dial.positionOfHz(Math.pow(2, place[at])) + step * dial.step())));
                next.add(moved);
            });
        }
        return next;
    }

    @Override
    public Turn turn(double[] place, Turn.Figures figures) {
        Setting to = setting(place);
        return new Turn(Optional.of(present), Optional.of(to), law.change(present, to, response), figures);
    }

    private Setting setting(double[] place) {
        Setting setting = present.switched(on);
        if (gain.isPresent()) {
            setting = setting.withGain(place[0]);
        }
        return frequency.isPresent() ? setting.withFrequency(frequency.get().positionOfHz(Math.pow(2, place[place.length - 1]))) : setting;
    }

    private static double[] place(Optional<Double> gainPosition, Optional<Double> octave) {
        List<Double> place = new ArrayList<>();
        gainPosition.ifPresent(place::add);
        octave.ifPresent(place::add);
        return place.stream().mapToDouble(Double::doubleValue).toArray();
    }

    private static List<Double> coarseOctaves(Dial dial) {
        double from = log2(dial.hz(dial.least()));
        double to = log2(dial.hz(dial.most()));
        List<Double> octaves = new ArrayList<>();
        for (int i = 0; i <= COARSE_FREQUENCIES; i++) {
            octaves.add(from + (to - from) * i / COARSE_FREQUENCIES);
        }
        return octaves;
    }

    private static List<Double> spread(List<Double> all, int about) {
        List<Double> some = new ArrayList<>();
        int step = Math.max(1, all.size() / about);
        for (int i = 0; i < all.size(); i += step) {
            some.add(all.get(i));
        }
        return some;
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }
}
