package evenwood.eq;

import java.util.ArrayList;
import java.util.List;

/** Several knobs turned at once, and what they leave. Immutable. */
final class Combination {
    static final Combination NOTHING_TURNED = new Combination(List.of());

    /** One knob at one place. */
    record Placed(Knob knob, double[] place, double[] effectDb) {
        static Placed at(Knob knob, double[] place) {
            return new Placed(knob, place, knob.effectDb(place));
        }
    }

    private final List<Placed> placed;

    Combination(List<Placed> placed) {
        this.placed = List.copyOf(placed);
    }

    List<Placed> placed() {
        return placed;
    }

    int size() {
        return placed.size();
    }

    boolean turns(Object control) {
        return placed.stream().anyMatch(each -> each.knob().control().equals(control));
    }

    Combination with(Placed more) {
        List<Placed> all = new ArrayList<>(placed);
        all.add(more);
        return new Combination(all);
    }

    Combination without(int index) {
        List<Placed> fewer = new ArrayList<>(placed);
        fewer.remove(index);
        return new Combination(fewer);
    }

    Combination replacing(int index, Placed other) {
        List<Placed> changed = new ArrayList<>(placed);
        changed.set(index, other);
        return new Combination(changed);
    }

    double[] effectDb(int bands) {
        double[] sum = new double[bands];
        for (Placed each : placed) {
            for (int i = 0; i < bands; i++) {
                sum[i] += each.effectDb[i];
            }
        }
        return sum;
    }

    Effort effort(ToneLoss loss) {
        return Effort.of(effects(), loss);
    }

    List<double[]> effects() {
        return placed.stream().map(Placed::effectDb).toList();
    }

    /** What it leaves, plus what the turning itself costs. */
    double cost(ToneLoss loss) {
        return loss.square(effectDb(loss.bands())) + effort(loss).cost();
    }
}
