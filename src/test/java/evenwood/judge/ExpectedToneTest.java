package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.Note;
import evenwood.measure.NoteName;
import evenwood.measure.NotesReading;
import evenwood.rig.PickupColour;
import evenwood.rig.ToneTarget;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ExpectedToneTest {
    private static final double LOW_HZ = NoteName.frequencyHz(45);
    private static final double HIGH_HZ = NoteName.frequencyHz(57);
    private static final ToneTarget TARGET = new ToneTarget(ToneTarget.Basis.OWN_SOUND, 2, "made for this test", allIn(10), flat(4), flat(4),
        List.of(new ToneTarget.NoteTone(LOW_HZ, allIn(3)), new ToneTarget.NoteTone(HIGH_HZ, allIn(6))));

    @Test
    void aNoteIsExpectedToSoundAsTheTargetHasIt() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 1, false)), Optional.empty());
        assertThat(levels[3]).isCloseTo(0, within(0.1));
        assertThat(levels[6]).isLessThan(-90);
    }

    @Test
    void notesCountForAsLongAsTheyLasted() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 3, false), note(HIGH_HZ, 1, false)), Optional.empty());
        // Three parts to one of the power: 10·lg(0.75) and 10·lg(0.25).
        assertThat(levels[3]).isCloseTo(-1.25, within(0.01));
        assertThat(levels[6]).isCloseTo(-6.02, within(0.01));
    }

    @Test
    void aPitchBetweenTwoTabledOnesIsAMixtureOfBoth() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(NoteName.frequencyHz(51), 1, false)), Optional.empty());
        assertThat(levels[3]).isCloseTo(-3.01, within(0.01));
        assertThat(levels[6]).isCloseTo(-3.01, within(0.01));
    }

    @Test
    void chordsAndNothingAtAllAreUsualPlaying() {
        assertThat(ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 1, true)), Optional.empty())[10]).isCloseTo(0, within(0.1));
        assertThat(ExpectedTone.levelsDb(TARGET, notes(), Optional.empty())[10]).isCloseTo(0, within(0.1));
    }

    @Test
    void aNoteFarBelowTheTableIsNotTakenForItsLowest() {
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(NoteName.frequencyHz(40), 1, false)), Optional.empty());
        assertThat(levels[3]).isLessThan(-90);
        assertThat(levels[10]).isCloseTo(0, within(0.1));
    }

    @Test
    void aPickupsColourMovesTheBandsAndTheWholeStaysTheWhole() {
        PickupColour colour = new PickupColour(PickupColour.Basis.ESTIMATE, "made for this test", withBand(6, 6), 4);
        double[] levels = ExpectedTone.levelsDb(TARGET, notes(note(LOW_HZ, 1, false), note(HIGH_HZ, 1, false)), Optional.of(colour));
        // Half the power each, then one of them four times (6.02 dB) as much: one part to four.
        assertThat(levels[6] - levels[3]).isCloseTo(6, within(0.01));
        assertThat(Math.pow(10, levels[3] / 10) + Math.pow(10, levels[6] / 10)).isCloseTo(1, within(0.001));
    }

    private static List<Double> withBand(int band, double db) {
        Double[] levels = flat(0).toArray(Double[]::new);
        levels[band] = db;
        return List.of(levels);
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
