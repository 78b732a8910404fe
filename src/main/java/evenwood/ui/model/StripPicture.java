package evenwood.ui.model;

import evenwood.ui.scale.TimeScale;
import java.util.List;
import java.util.stream.Collectors;

/**
 * The last minutes of a take, and what is told of the moment the player points at.
 *
 * @param moments  oldest first
 * @param time     the axis
 * @param chosen   index of the moment pointed at; −1 for none
 * @param caption  what the chosen moment, or the newest, was like
 */
public record StripPicture(List<StripHistory.Moment> moments, TimeScale time, int chosen, String caption) {
    /** A shorter take does not fill a strip of five minutes; it gets at least so much. */
    private static final double SHORTEST_SECONDS = 60;

    /** @param pointedSeconds the moment pointed at; negative for none */
    public static StripPicture of(List<StripHistory.Moment> moments, double pointedSeconds, Words words) {
        if (moments.isEmpty()) {
            return new StripPicture(moments, new TimeScale(0, SHORTEST_SECONDS), -1, words.say("strip.empty"));
        }
        double end = moments.get(moments.size() - 1).seconds();
        double length = Math.max(SHORTEST_SECONDS, Math.min(StripHistory.KEPT_SECONDS, end));
        TimeScale time = TimeScale.endingAt(end, length);
        int chosen = pointedSeconds < 0 ? -1 : nearest(moments, pointedSeconds);
        StripHistory.Moment told = moments.get(chosen < 0 ? moments.size() - 1 : chosen);
        String faults = told.faults().stream().map(words::fault).collect(Collectors.joining(", "));
        return new StripPicture(moments, time, chosen, words.say(faults.isEmpty() ? "strip.moment" : "strip.moment-faults", words.clock(told.seconds()),
            words.level(told.peakDbtp(), "unit.dbtp"), words.level(told.lufs(), "unit.lufs"), faults));
    }

    private static int nearest(List<StripHistory.Moment> moments, double seconds) {
        int best = 0;
        for (int i = 1; i < moments.size(); i++) {
            if (Math.abs(moments.get(i).seconds() - seconds) < Math.abs(moments.get(best).seconds() - seconds)) {
                best = i;
            }
        }
        return best;
    }
}
