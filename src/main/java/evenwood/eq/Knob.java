package evenwood.eq;

import java.util.List;

/**
 * Something the solver may turn: a control of a rig, or a stage of an equaliser without a rig.
 *
 * <p>A place is an array with one value a dial: decibels or a position, the logarithm of a frequency, the logarithm of a Q.
 * A switch that is thrown has no dials and one place.
 */
interface Knob {
    /** What must not be turned twice in one answer; several knobs of one control (on, off) share it. */
    Object control();

    double[] least();

    double[] most();

    /** Places to look at first, coarse but all over. */
    List<double[]> starts();

    /** What each of the starts does, in their order. */
    default List<double[]> startEffectsDb() {
        return starts().stream().map(this::effectDb).toList();
    }

    /** By how many decibels each band changes against the present setting. */
    double[] effectDb(double[] place);

    /** The nearest place a hand can set. */
    double[] settable(double[] place);

    /** Settable places next to a settable one. */
    List<double[]> nextTo(double[] place);

    /** The move to a place. */
    Turn turn(double[] place, Turn.Figures figures);
}
