package evenwood.journal;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.stat.StatUtils;

/**
 * When somebody played, in days; told when asked for and never otherwise.
 *
 * @param minutes    played in the last {@link #SPAN_DAYS} days
 * @param days       on which something was played among them
 * @param streakDays days in a row up to today, or up to yesterday while today is still young
 */
public record PracticeDays(long minutes, int days, int streakDays) {
    public static final int SPAN_DAYS = 30;
    private static final int FEWEST_FOR_USUAL = 3;

    public static PracticeDays of(List<Practice> sittings, LocalDate today) {
        List<Practice> late = sittings.stream().filter(sitting -> sitting.at().toLocalDate().isAfter(today.minusDays(SPAN_DAYS)) && !sitting.at().toLocalDate().isAfter(today)).toList();
        Set<LocalDate> all = sittings.stream().map(sitting -> sitting.at().toLocalDate()).collect(Collectors.toSet());
        LocalDate day = all.contains(today) ? today : today.minusDays(1);
        int streak = 0;
        while (all.contains(day.minusDays(streak))) {
            streak++;
        }
        double seconds = late.stream().mapToDouble(sitting -> sitting.figures().playingSeconds()).sum();
        return new PracticeDays(Math.round(seconds / 60), (int) late.stream().map(sitting -> sitting.at().toLocalDate()).distinct().count(), streak);
    }

    /** A sitting's treble less the median of the others with the same instrument; empty with fewer than three others. */
    public static OptionalDouble trebleAgainstUsual(Practice sitting, List<Practice> all) {
        double[] others = all.stream().filter(other -> !other.uid().equals(sitting.uid()) && other.instrument().equalsIgnoreCase(sitting.instrument()))
            .mapToDouble(other -> other.figures().highDb()).filter(Double::isFinite).toArray();
        return others.length < FEWEST_FOR_USUAL || !Double.isFinite(sitting.figures().highDb()) ? OptionalDouble.empty()
            : OptionalDouble.of(sitting.figures().highDb() - StatUtils.percentile(others, 50));
    }
}
