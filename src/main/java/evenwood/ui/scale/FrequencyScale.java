package evenwood.ui.scale;

import java.util.List;

/** Where a frequency lies on an axis on which every octave is equally wide. */
public record FrequencyScale(double lowestHz, double highestHz) {
    /** The edges of the third octaves 50 Hz and 16 kHz. */
    public static final FrequencyScale INSTRUMENTS = new FrequencyScale(44.5, 17_900);
    private static final List<Integer> TICKS_HZ = List.of(50, 100, 200, 500, 1000, 2000, 5000, 10_000);

    public FrequencyScale {
        if (!(lowestHz > 0 && lowestHz < highestHz)) {
            throw new IllegalArgumentException("frequency scale: lowestHz=" + lowestHz + ", highestHz=" + highestHz + ", but 0 < low < high is needed");
        }
    }

    /** 0 at the left, 1 at the right; what lies outside is put at the end. */
    public double part(double hz) {
        return hz <= lowestHz ? 0 : Math.min(1, Math.log(hz / lowestHz) / Math.log(highestHz / lowestHz));
    }

    public double hz(double part) {
        return lowestHz * Math.pow(highestHz / lowestHz, part);
    }

    /** Round frequencies for ticks; fewer where the axis is short. */
    public List<Integer> ticksHz(boolean few) {
        return few ? List.of(100, 1000, 10_000) : TICKS_HZ;
    }
}
