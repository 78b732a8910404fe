package evenwood.judge;

import evenwood.measure.NoteName;
import evenwood.measure.NoteSpectraReading;
import evenwood.measure.TakeReadings;
import java.util.ArrayList;
import java.util.List;

/**
 * Says what to play so that a take can be compared with the one it should be like. Limits: our choice.
 *
 * <p>How far apart the notes of two takes lie is said in half tones: of chords the octave may be heard wrong, in both alike.
 */
public final class SharedNotesRule {
    private static final int FEWEST_NOTES = 3;
    /** Fewer bands than this are no tone; the rest of {@link ToneComparison} needs as many. */
    private static final int FEWEST_BANDS = 8;
    private static final int NEAR_SEMITONES = 4;

    private SharedNotesRule() { }

    public static List<Statement> missing(ToneComparison comparison, TakeReadings heard, TakeReadings wanted) {
        int[] here = heard.noteSpectra().midis();
        int[] there = wanted.noteSpectra().midis();
        if (there.length < FEWEST_NOTES) {
            return List.of(Statement.of("missing.like-other-notes", wanted.take().name()));
        }
        int lowest = there[0];
        int highest = there[there.length - 1];
        if (here.length < FEWEST_NOTES || comparison.difference().bands().size() < FEWEST_BANDS) {
            return List.of(Statement.of("missing.like-notes", NoteName.of(lowest), NoteName.of(highest)));
        }
        List<Statement> missing = new ArrayList<>();
        if (here[0] - lowest > NEAR_SEMITONES) {
            missing.add(Statement.of("missing.like-low", here[0] - lowest));
        }
        if (highest - here[here.length - 1] > NEAR_SEMITONES) {
            missing.add(Statement.of("missing.like-high", highest - here[here.length - 1]));
        }
        return missing;
    }
}
