package evenwood.judge;

/**
 * Where the hardest playing should peak at the tap we listen at.
 *
 * @param lowDbtp           under this, sound drowns in noise sooner than it must
 * @param highDbtp          over this, one harder stroke may clip
 * @param underOnsetDb      how far the hardest playing stays under the level where a stage begins to distort
 */
public record TargetWindow(double lowDbtp, double highDbtp, double underOnsetDb) {
    /** −12 to −6 dBTP and 3 dB under any onset: our choice, from the trade's habit of leaving 6 to 12 dB of headroom. */
    public static final TargetWindow DEFAULT = new TargetWindow(-12, -6, 3);

    public TargetWindow {
        if (!(lowDbtp < highDbtp && highDbtp <= 0 && underOnsetDb >= 0)) {
            throw new IllegalArgumentException("target window: lowDbtp=" + lowDbtp + ", highDbtp=" + highDbtp
                + ", underOnsetDb=" + underOnsetDb + ", but low < high ≤ 0 and underOnsetDb ≥ 0 are needed");
        }
    }

    public double aimDbtp() {
        return (lowDbtp + highDbtp) / 2;
    }

    public boolean contains(double peakDbtp) {
        return peakDbtp >= lowDbtp && peakDbtp <= highDbtp;
    }
}
