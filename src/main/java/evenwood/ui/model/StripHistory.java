package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.Fault;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What the last minutes were like: level, loudness and what was found, four times a second. Older moments are forgotten.
 *
 * <p>Thread: any; the list handed out is a copy.
 */
public final class StripHistory {
    public static final double KEPT_SECONDS = 300;
    public static final double STEP_SECONDS = 0.25;
    private static final int MOST = (int) (KEPT_SECONDS / STEP_SECONDS);

    /**
     * @param seconds  when, in the take
     * @param peakDbtp highest since the moment before; −Infinity for silence
     * @param lufs     loudness; −Infinity for silence
     * @param faults   what stood as found then
     */
    public record Moment(double seconds, double peakDbtp, double lufs, Set<Fault> faults) { }

    private final List<Moment> moments = new ArrayList<>();
    private long revision;
    private double pendingPeakDbtp = Double.NEGATIVE_INFINITY;

    /** Takes note of a moment; those closer than a step to the last one are joined to it. */
    public synchronized void add(double seconds, double peakDbtp, double lufs, Set<Fault> faults) {
        pendingPeakDbtp = Math.max(pendingPeakDbtp, peakDbtp);
        if (!moments.isEmpty() && seconds < moments.get(moments.size() - 1).seconds() + STEP_SECONDS) {
            return;
        }
        revision++;
        moments.add(new Moment(seconds, pendingPeakDbtp, lufs, faults.isEmpty() ? Set.of() : EnumSet.copyOf(faults)));
        pendingPeakDbtp = Double.NEGATIVE_INFINITY;
        if (moments.size() > MOST) {
            moments.remove(0);
        }
    }

    /** What a live take is like just now, and what was found by then. */
    void add(TakeReadings readings, Optional<Assessment> assessment) {
        Set<Fault> faults = EnumSet.noneOf(Fault.class);
        assessment.ifPresent(each -> each.verdict().findings().forEach(finding -> faults.add(finding.fault())));
        add(readings.take().durationSeconds(), readings.now().peakDbtp(), readings.loudness().momentaryLufs(), faults);
    }

    public synchronized void clear() {
        moments.clear();
        revision++;
        pendingPeakDbtp = Double.NEGATIVE_INFINITY;
    }

    /** Another number whenever the moments are others. */
    public synchronized long revision() {
        return revision;
    }

    public synchronized List<Moment> moments() {
        return List.copyOf(moments);
    }
}
