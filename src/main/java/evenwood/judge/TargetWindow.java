package evenwood.judge;

import java.util.OptionalDouble;

/**
 * Where the hardest playing should peak at the tap we listen at.
 *
 * @param lowDbtp           under this, sound drowns in noise sooner than it must
 * @param highDbtp          over this, one harder stroke may clip
 * @param underOnsetDb      how far the hardest playing stays under the level where a stage begins to distort
 * @param cleanUpToDbfs     the peak at this tap up to which a sweep found the box clean as it stands, if one was made
 */
public record TargetWindow(double lowDbtp, double highDbtp, double underOnsetDb, OptionalDouble cleanUpToDbfs) {
    /** −12 to −6 dBTP and 3 dB under any onset: our choice, from the trade's habit of leaving 6 to 12 dB of headroom. */
    public static final TargetWindow DEFAULT = new TargetWindow(-12, -6, 3, OptionalDouble.empty());

    public TargetWindow {
        if (!(lowDbtp < highDbtp && highDbtp <= 0 && underOnsetDb >= 0)) {
            throw new IllegalArgumentException("target window: lowDbtp=" + lowDbtp + ", highDbtp=" + highDbtp
                + ", underOnsetDb=" + underOnsetDb + ", but low < high ≤ 0 and underOnsetDb ≥ 0 are needed");
        }
    }

    /** The same for a box of which a sweep told how loud it stays clean. */
    public TargetWindow cleanUpTo(OptionalDouble dbfs) {
        return new TargetWindow(lowDbtp, highDbtp, underOnsetDb, dbfs);
    }

    /** Over this the box distorts sooner than the recorder clips; +Infinity when nobody knows. */
    public double cleanCeilingDbtp() {
        return cleanUpToDbfs.isPresent() ? cleanUpToDbfs.getAsDouble() - underOnsetDb : Double.POSITIVE_INFINITY;
    }

    /** Whether the box, not the recorder, says how loud the hardest playing may be. */
    public boolean isBoxTheLimit() {
        return cleanCeilingDbtp() < highDbtp;
    }

    public double aimDbtp() {
        return (lowDbtp + highDbtp) / 2;
    }

    public boolean contains(double peakDbtp) {
        return peakDbtp >= lowDbtp && peakDbtp <= highDbtp;
    }
}
