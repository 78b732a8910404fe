package evenwood.judge;

import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * A note that jumps out every time: a resonance of the body, named by the word for where it lies.
 *
 * <p>How: the worst {@link NarrowCut} of each word; slight unless it stands far out, because players lean on some notes.
 * Says nothing where the whole region was already found.
 */
final class NoteEvennessRule {
    private static final double CLEAR_DB = 10;
    private static final int CLEAR_TIMES = 4;
    private static final double CLEAR_PROBABILITY = 0.85;
    private static final double SLIGHT_PROBABILITY = 0.6;
    private static final double SEMITONE = Math.pow(2, 1.0 / 12);

    private NoteEvennessRule() { }

    static List<Finding> findings(TakeReadings readings, List<Finding> already) {
        Set<Fault> named = EnumSet.noneOf(Fault.class);
        already.forEach(finding -> named.add(finding.fault()));
        List<Finding> findings = new ArrayList<>();
        for (NarrowCut cut : NarrowCut.of(readings)) {
            Fault fault = cut.fault();
            if (named.add(fault)) {
                boolean clear = cut.standsOutDb() >= CLEAR_DB && cut.count() >= CLEAR_TIMES;
                findings.add(new Finding(fault, clear ? Severity.CLEAR : Severity.SLIGHT, clear ? CLEAR_PROBABILITY : SLIGHT_PROBABILITY,
                    Statement.of("note.jumps-out", cut.note(), cut.frequencyHz(), cut.standsOutDb(), cut.halfWidthDb(), cut.count(), cut.q(), -cut.changeDb()),
                    Optional.of(new BandHz(cut.frequencyHz() / SEMITONE, cut.frequencyHz() * SEMITONE))));
            }
        }
        return findings;
    }
}
