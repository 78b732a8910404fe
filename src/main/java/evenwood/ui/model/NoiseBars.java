package evenwood.ui.model;

import evenwood.report.HuntPicture;
import java.util.ArrayList;
import java.util.List;

/**
 * The bars of a noise hunt, now as they were measured, before and after a change; while a measurement goes on, what it has heard so far.
 *
 * @param before the noise as it was
 * @param after  with one change; empty when there is nothing to hold against
 * @param moving whether {@code after}, or {@code before} if that is empty, is still being measured
 */
public record NoiseBars(List<HuntPicture.Bar> before, List<HuntPicture.Bar> after, boolean moving) {
    /** A bar is there in about a third of a second; our choice. */
    private static final double PER_SECOND = 9;
    private static final double NEAR_DB = 0.05;

    public NoiseBars {
        before = List.copyOf(before);
        after = List.copyOf(after);
    }

    /** On the way from these to those, so that the eye can follow; a bar that was not there before is there at once. */
    public NoiseBars towards(NoiseBars those, double seconds) {
        double part = 1 - Math.exp(-PER_SECOND * seconds);
        return new NoiseBars(towards(before, those.before, part), towards(after, those.after, part), those.moving);
    }

    private static List<HuntPicture.Bar> towards(List<HuntPicture.Bar> from, List<HuntPicture.Bar> to, double part) {
        if (from.size() != to.size()) {
            return to;
        }
        List<HuntPicture.Bar> bars = new ArrayList<>();
        for (int i = 0; i < to.size(); i++) {
            double gap = to.get(i).levelDbfs() - from.get(i).levelDbfs();
            bars.add(Math.abs(gap) < NEAR_DB ? to.get(i) : new HuntPicture.Bar(to.get(i).part(), to.get(i).word(), from.get(i).levelDbfs() + part * gap,
                from.get(i).halfWidthDb() + part * (to.get(i).halfWidthDb() - from.get(i).halfWidthDb()), to.get(i).noticeable()));
        }
        return bars;
    }
}
