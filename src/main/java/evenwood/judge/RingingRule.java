package evenwood.judge;

import evenwood.measure.Ring;
import evenwood.measure.TakeReadings;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * Howl that started. The meter lists only what it stands behind; the one that grew fastest is named.
 *
 * <p>Source of the limit: our choice. One start of a howl is clear; two, or one that doubles in a fifth of a second, spoil
 * the take and hurt ears.
 */
final class RingingRule {
    private static final double FAST_DB_PER_SECOND = 30;
    private static final double SURE = 0.95;

    private RingingRule() { }

    static List<Finding> findings(TakeReadings readings) {
        List<Ring> rings = readings.ringing().rings();
        if (rings.isEmpty()) {
            return List.of();
        }
        Ring fastest = rings.stream().max(Comparator.comparingDouble(Ring::growthDbPerSecond)).orElseThrow();
        boolean strong = rings.size() > 1 || fastest.growthDbPerSecond() >= FAST_DB_PER_SECOND;
        return List.of(new Finding(Fault.RINGING, strong ? Severity.STRONG : Severity.CLEAR, SURE,
            Statement.of("ringing.evidence", fastest.frequencyHz(), fastest.startSeconds(), fastest.growthDbPerSecond(), rings.size()),
            Optional.of(new BandHz(fastest.frequencyHz(), fastest.frequencyHz()))));
    }
}
