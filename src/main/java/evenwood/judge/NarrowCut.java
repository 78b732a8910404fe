package evenwood.judge;

import evenwood.measure.NoteEvenness;
import evenwood.measure.TakeReadings;
import java.util.Comparator;
import java.util.List;

/**
 * The narrow cut that would tame a note the body makes jump out.
 *
 * <p>How: at the note's pitch, about two semitones wide (a cut that follows the resonance of a body and leaves the notes
 * beside it alone), as deep as the note stands over its neighbours beyond what a hand does by itself. Source: our choice.
 * <p>Limits: only notes low enough for their fundamental to lie where bodies resonate; above, a loud note is the player's.
 *
 * @param note         "A2"
 * @param frequencyHz  middle of the cut
 * @param q            the cookbook's Q
 * @param changeDb     negative
 * @param standsOutDb  how far the note stands over its neighbours
 * @param halfWidthDb  95 % of that, ±
 * @param count        how many times it was heard
 */
public record NarrowCut(String note, double frequencyHz, double q, double changeDb, double standsOutDb, double halfWidthDb, int count) {
    private static final double TWO_SEMITONES_Q = 8;
    /** Air and top resonances of all but the smallest bodies; reference §9.3. */
    private static final double HIGHEST_BODY_HZ = 600;
    private static final double LEAST_DB = 6;
    private static final double USUAL_HAND_DB = 3;
    private static final double DEEPEST_DB = 9;
    private static final int FEWEST_TIMES = 3;
    private static final double BOXY_FROM_HZ = 250;

    /** Worst first; empty when no note jumps out for sure. */
    public static List<NarrowCut> of(TakeReadings readings) {
        return NoteEvenness.of(readings.notes()).stream().filter(NarrowCut::jumpsOut)
            .sorted(Comparator.comparingDouble(NoteEvenness.Unevenness::differenceDb).reversed()).map(NarrowCut::of).toList();
    }

    /** The word for where it lies. */
    public Fault fault() {
        return frequencyHz < BOXY_FROM_HZ ? Fault.BOOMY : Fault.BOXY;
    }

    private static boolean jumpsOut(NoteEvenness.Unevenness note) {
        return note.count() >= FEWEST_TIMES && note.frequencyHz() <= HIGHEST_BODY_HZ && note.differenceDb() >= LEAST_DB
            && note.differenceDb() - note.halfWidthDb() >= USUAL_HAND_DB;
    }

    private static NarrowCut of(NoteEvenness.Unevenness note) {
        return new NarrowCut(note.name(), note.frequencyHz(), TWO_SEMITONES_Q, -Math.min(DEEPEST_DB, note.differenceDb() - USUAL_HAND_DB),
            note.differenceDb(), note.halfWidthDb(), note.count());
    }
}
