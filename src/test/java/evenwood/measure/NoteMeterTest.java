package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.sound.AudioBlock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class NoteMeterTest {
    private static final int RATE = 48_000;
    private static final int[] SCALE = {0, 2, 4, 5, 7, 9, 11, 12};

    @ParameterizedTest
    @ValueSource(ints = {8_000, 16_000, 22_050, 44_100, 48_000, 96_000, 192_000})
    void aPluckedScaleIsReadNoteByNote(int rate) {
        SoundSketch sketch = new SoundSketch(rate, 7, 1).hiss(-70);
        for (int i = 0; i < 8; i++) {
            sketch.pluck(1.5 + 0.4 * i, 0.38, NoteName.frequencyHz(48 + SCALE[i]), -12 - i, 15);
        }
        List<Note> notes = read(sketch).notes();
        assertThat(notes).hasSize(8);
        for (int i = 0; i < 8; i++) {
            Note note = notes.get(i);
            assertThat(note.startSeconds()).isCloseTo(1.5 + 0.4 * i, within(0.015));
            assertThat(note.midi()).isEqualTo(48 + SCALE[i]);
            assertThat(note.cents()).isCloseTo(0, within(3.0));
            assertThat(note.peakDbfs()).isCloseTo(-12 - i, within(0.5));
            assertThat(note.polyphonic()).isFalse();
        }
    }

    @Test
    void slurredBowedNotesAreToldApartByTheirPitch() {
        SoundSketch sketch = new SoundSketch(RATE, 6, 2).hiss(-70);
        for (int i = 0; i < 4; i++) {
            sketch.bow(1.5 + 0.5 * i, 0.55, NoteName.frequencyHz(62 + SCALE[i]), -15);
        }
        assertThat(read(sketch).notes()).extracting(Note::midi).containsExactly(62, 64, 66, 67);
    }

    @Test
    void aChordIsOneNoteWithoutASinglePitch() {
        SoundSketch sketch = new SoundSketch(RATE, 4, 3).hiss(-70);
        for (int midi : new int[] {48, 52, 55, 60, 64}) {
            sketch.pluck(1.5, 1.5, NoteName.frequencyHz(midi), -20, 12);
        }
        List<Note> notes = read(sketch).notes();
        assertThat(notes).hasSize(1);
        assertThat(notes.get(0).polyphonic()).isTrue();
    }

    @Test
    void levelAfterTheAttackIsTheRmsOfThatStretch() {
        // A steady tone: RMS of ten... twenty partials 1/n against the peak is measured on the sound itself.
        SoundSketch sketch = new SoundSketch(RATE, 3, 4).hiss(-80).pluck(1.5, 1, 220, -10, 0.001);
        double sum = 0;
        for (int i = (int) (1.6 * RATE); i < (int) (1.9 * RATE); i++) {
            sum += sketch.samples[i] * sketch.samples[i];
        }
        Note note = read(sketch).notes().get(0);
        assertThat(note.levelDbfs()).isCloseTo(10 * Math.log10(sum / (0.3 * RATE)), within(0.1));
        assertThat(note.peakDbfs()).isCloseTo(-10, within(0.1));
    }

    @Test
    void dynamicsAreTheQuantilesOfWhatWasStruck() {
        SoundSketch sketch = new SoundSketch(RATE, 24, 5).hiss(-80);
        for (int i = 0; i < 21; i++) {
            sketch.pluck(1.5 + i, 0.6, 196, -30 + i, 15); // −30 to −10 dBFS
        }
        DynamicsReading dynamics = dynamics(sketch);
        assertThat(dynamics.noteCount()).isEqualTo(21);
        // Of n values a step apart the estimate at a share p is the lowest + n·p − ½: the mean of the ranks that the beta law gives.
        assertThat(dynamics.softDbfs()).isCloseTo(-30 + 2.1 - 0.5, within(0.2));
        assertThat(dynamics.usualDbfs()).isCloseTo(-20, within(0.2));
        assertThat(dynamics.hardDbfs()).isCloseTo(-30 + 19.95 - 0.5, within(0.2));
    }

    @Test
    void tooFewNotesGiveNoDynamics() {
        SoundSketch sketch = new SoundSketch(RATE, 9, 6).hiss(-80);
        for (int i = 0; i < 7; i++) {
            sketch.pluck(1.5 + i, 0.6, 196, -20, 15);
        }
        DynamicsReading dynamics = dynamics(sketch);
        assertThat(dynamics.noteCount()).isEqualTo(7);
        assertThat(dynamics.isKnown()).isFalse();
        assertThat(dynamics.usualDbfs()).isEqualTo(Double.NEGATIVE_INFINITY);
        assertThat(dynamics.rangeDb()).isZero();
    }

    @Test
    void summariesCountEachNoteOnce() {
        SoundSketch sketch = new SoundSketch(RATE, 8, 7).hiss(-80);
        int[] played = {60, 64, 60, 67, 60, 64};
        for (int i = 0; i < played.length; i++) {
            sketch.pluck(1.5 + i, 0.6, NoteName.frequencyHz(played[i]), -20, 15);
        }
        List<NoteSummary> summaries = read(sketch).summaries();
        assertThat(summaries).extracting(NoteSummary::name).containsExactly("C4", "E4", "G4");
        assertThat(summaries).extracting(NoteSummary::count).containsExactly(3, 2, 1);
        assertThat(summaries.get(0).frequencyHz()).isCloseTo(261.626, within(0.2));
    }

    @Test
    void noiseAndHumHaveNoNotes() {
        assertThat(read(new SoundSketch(RATE, 10, 8).hiss(-45)).notes()).isEmpty();
        assertThat(read(new SoundSketch(RATE, 10, 9).hum(50, -40).hiss(-70)).notes()).isEmpty();
    }

    @Test
    void clicksInTheRestsAreNoNotes() {
        SoundSketch sketch = new SoundSketch(RATE, 12, 10).hiss(-75);
        for (int i = 0; i < 8; i++) {
            sketch.click(1 + 1.3 * i, -25);
        }
        assertThat(read(sketch).notes()).isEmpty();
    }

    @Test
    void theTunerShowsTheNewestPitch() {
        NoteMeter meter = new NoteMeter(new HopGrid(RATE), 100);
        assertThat(meter.pitchNow()).isEqualTo(PitchReading.NONE);
        meter.accept(AudioBlock.of(0, new SoundSketch(RATE, 0.5, 11).pluck(0, 0.5, 82.407 * Math.pow(2, 12 / 1200.0), -12, 10).samples));
        PitchReading pitch = meter.pitchNow();
        assertThat(pitch.name()).isEqualTo("E2");
        assertThat(pitch.cents()).isCloseTo(12, within(1.0));
        assertThat(pitch.clarity()).isGreaterThan(0.9);
        meter.accept(AudioBlock.of(0, new SoundSketch(RATE, 0.5, 12).hiss(-40).samples));
        assertThat(meter.pitchNow()).isEqualTo(PitchReading.NONE);
    }

    @Test
    void humAloneShowsNoPitchAndPlayingOverItDoes() {
        // Hum of −50 dBFS, notes whose RMS soon sinks to it.
        SoundSketch sketch = new SoundSketch(RATE, 12, 13).hum(50, -50).hiss(-80);
        for (int i = 0; i < 8; i++) {
            sketch.pluck(4 + 0.8 * i, 0.7, NoteName.frequencyHz(55 + SCALE[i]), -30, 15);
        }
        List<Note> notes = read(sketch).notes();
        assertThat(notes).extracting(Note::midi).containsExactly(55, 57, 59, 60, 62, 64, 66, 67);
        assertThat(notes).allSatisfy(note -> assertThat(note.cents()).isCloseTo(0, within(10.0)));
        NoteMeter meter = new NoteMeter(new HopGrid(RATE), 1000);
        Blocks.feed(java.util.Arrays.copyOf(sketch.samples, 4 * RATE), meter::accept);
        assertThat(meter.pitchNow()).isEqualTo(PitchReading.NONE);
    }

    private static DynamicsReading dynamics(SoundSketch sketch) {
        return NoteScore.dynamics(sketch.samples, sketch.sampleRateHz);
    }

    private static NotesReading read(SoundSketch sketch) {
        return NoteScore.read(sketch.samples, sketch.sampleRateHz);
    }
}
