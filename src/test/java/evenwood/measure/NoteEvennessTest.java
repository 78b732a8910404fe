package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoteEvennessTest {
    private static final int LOUD_MIDI = 45;

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aNoteThatJumpsOutIsToldWhateverTheDynamics(long seed) {
        List<NoteEvenness.Unevenness> uneven = NoteEvenness.of(scales(seed, 9, 12));
        NoteEvenness.Unevenness loud = uneven.stream().filter(note -> note.midi() == LOUD_MIDI).findFirst().orElseThrow();
        assertThat(loud.name()).isEqualTo("A2");
        assertThat(loud.differenceDb()).isCloseTo(9, within(2.5));
        assertThat(loud.differenceDb() - loud.halfWidthDb()).isPositive();
        assertThat(uneven).filteredOn(note -> note.midi() != LOUD_MIDI).allMatch(note -> Math.abs(note.differenceDb()) < 4);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13, 14, 15, 16})
    void anInstrumentThatGetsSofterUpwardsIsNotUneven(long seed) {
        assertThat(NoteEvenness.of(scales(seed, 0, 0))).isNotEmpty().allMatch(note -> Math.abs(note.differenceDb()) < 3.5);
    }

    @Test
    void chordsAndLonelyNotesSayNothing() {
        assertThat(NoteEvenness.of(new NotesReading(List.of()))).isEmpty();
        assertThat(NoteEvenness.of(new NotesReading(List.of(note(0, 45, -20, false), note(1, 47, -20, false))))).isEmpty();
        List<Note> chords = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            chords.add(note(i, 45 + i % 5, -20, true));
        }
        assertThat(NoteEvenness.of(new NotesReading(chords))).isEmpty();
    }

    /** Scales up and down over two octaves, soft and hard in turn, 0.4 dB softer each semitone, 1 dB of a player's hand. */
    private static NotesReading scales(long seed, double louderDb, double dynamicsDb) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Note> notes = new ArrayList<>();
        for (int scale = 0; scale < 6; scale++) {
            for (int step = 0; step < 24; step += 2) {
                int midi = scale % 2 == 0 ? 41 + step : 63 - step;
                double level = -20 - 0.4 * (midi - 41) - (scale % 3) * dynamicsDb / 2 + 2 * random.nextDouble() - 1 + (midi == LOUD_MIDI ? louderDb : 0);
                notes.add(note(notes.size(), midi, level, false));
            }
        }
        return new NotesReading(notes);
    }

    private static Note note(int place, int midi, double levelDbfs, boolean polyphonic) {
        return new Note(place * 0.4, place * 0.4 + 0.35, NoteName.frequencyHz(midi), midi, 0.95, polyphonic, levelDbfs + 8, levelDbfs);
    }
}
