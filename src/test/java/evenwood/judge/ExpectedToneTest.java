package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.Note;
import evenwood.measure.NoteName;
import evenwood.measure.NotesReading;
import evenwood.rig.ToneTarget;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class ExpectedToneTest {
    private static final double LOW_HZ = NoteName.frequencyHz(45);
    private static final double HIGH_HZ = NoteName.frequencyHz(57);
    private static final ToneTarget TARGET = new ToneTarget(ToneTarget.Basis.OWN_SOUND, 2, "made for this test", allIn(10), flat(4), flat(4),
        List.of(new ToneTarget.NoteTone(LOW_HZ, allIn(3)), new ToneTarget.NoteTone(HIGH_HZ, allIn(6))));

    @Test
    void aNoteIsExpectedToSoundAsTheTargetHasIt() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 1, false)));
        assertThat(levels[3]).isCloseTo(0, within(0.1));
        assertThat(levels[6]).isLessThan(-90);
    }

    @Test
    void notesCountForAsLongAsTheyLasted() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 3, false), note(HIGH_HZ, 1, false)));
        // Three parts to one of the power: 10·lg(0.75) and 10·lg(0.25).
        assertThat(levels[3]).isCloseTo(-1.25, within(0.01));
        assertThat(levels[6]).isCloseTo(-6.02, within(0.01));
    }

    @Test
    void aPitchBetweenTwoTabledOnesIsAMixtureOfBoth() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(NoteName.frequencyHz(51), 1, false)));
        assertThat(levels[3]).isCloseTo(-3.01, within(0.01));
        assertThat(levels[6]).isCloseTo(-3.01, within(0.01));
    }

    @Test
    void chordsAndNothingAtAllAreUsualPlaying() {
        assertThat(ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 1, true)))[10]).isCloseTo(0, within(0.1));
        assertThat(ExpectedTone.levelsDb(TARGET, notes())[10]).isCloseTo(0, within(0.1));
    }

    @Test
    void aNoteFarBelowTheTableIsNotTakenForItsLowest() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(NoteName.frequencyHz(40), 1, false)));
        assertThat(levels[3]).isLessThan(-90);
        assertThat(levels[10]).isCloseTo(0, within(0.1));
    }

    private static NotesReading notes(Note... notes) {
        return new NotesReading(Arrays.asList(notes));
    }

    private static Note note(double hz, double seconds, boolean polyphonic) {
        return new Note(0, seconds, hz, NoteName.nearest(hz), 0.95, polyphonic, -12, -20);
    }

    /** All of the sound in one band. */
    private static List<Double> allIn(int band) {
        Double[] levels = new Double[ToneTarget.BANDS];
        Arrays.fill(levels, -100.0);
        levels[band] = 0.0;
        return List.of(levels);
    }

    private static List<Double> flat(double db) {
        return Collections.nCopies(ToneTarget.BANDS, db);
    }
}
