package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.takes.Dynamics;
import evenwood.takes.PackagedTakes;
import evenwood.takes.PhraseKind;
import evenwood.takes.PlayedInstrument.Playing;
import evenwood.takes.SampledBank;
import evenwood.takes.Take;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Notes told against notes asked for, on the packaged voices (a part of them for chords), a phrase of usual strength and a
 * soft one, over −75 dBFS of room noise.
 * A start counts within 50 ms, a pitch within 50 cents. The TIM bank served to choose the figures of the meter, the
 * others did not. The written start of a bowed note is when the bow is set on, 30 to 100 ms before it is heard.
 */
class NoteRealAudioTest {
    private static final int EVERY = 4;
    private static final double TOLERANCE_SECONDS = 0.05;
    private static final String HEAD = "| | notes | precision | recall | F | pitch right | octave wrong | called several | chords called so |\n"
        + "|---|---|---|---|---|---|---|---|---|\n";

    @Test
    void pluckedTunesAreReadNoteByNote() {
        NoteScore score = score("plucked-tunes", Playing.PLUCKED, 1, PhraseKind.SCALE, PhraseKind.MELODY);
        assertThat(score.fMeasure()).isGreaterThanOrEqualTo(0.9);
        assertThat(score.pitchShare()).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void arpeggiosOverRingingStringsAreHeard() {
        assertThat(score("arpeggios", Playing.PLUCKED, EVERY, PhraseKind.ARPEGGIO, PhraseKind.ARPEGGIO).fMeasure()).isGreaterThanOrEqualTo(0.9);
    }

    @Test
    void strumsAreHeardAsChords() {
        NoteScore score = score("strums", Playing.PLUCKED, EVERY, PhraseKind.STRUM, PhraseKind.STRUM);
        assertThat(score.fMeasure()).isGreaterThanOrEqualTo(0.9);
        assertThat(score.chordsCalledChord / (double) score.chords).isGreaterThanOrEqualTo(0.75);
    }

    @Test
    void longBowedNotesAreReadNoteByNote() {
        NoteScore score = score("long-bowed", Playing.BOWED, 1, PhraseKind.LONG_NOTES, PhraseKind.LONG_NOTES);
        assertThat(score.fMeasure()).isGreaterThanOrEqualTo(0.9);
        assertThat(score.pitchShare()).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void quickBowedNotesHaveTheRightPitchWhereTheyAreFound() {
        assertThat(score("quick-bowed", Playing.BOWED, 1, PhraseKind.SCALE, PhraseKind.MELODY).pitchShare()).isGreaterThanOrEqualTo(0.95);
    }

    @Test
    void mostQuickBowedNotesAreFoundWithinATenthOfASecond() {
        NoteScore score = score("quick-bowed-100ms", Playing.BOWED, 1, 0.1, PhraseKind.SCALE, PhraseKind.MELODY);
        assertThat(score.fMeasure()).isGreaterThanOrEqualTo(0.8);
    }

    /** Peaks of −30 dBFS over hum of −60 dBFS: soft notes lie no more than 10 dB above it. */
    @Test
    void pluckedTunesOverHumAreReadToo() {
        NoteScore score = new NoteScore(TOLERANCE_SECONDS);
        List<Take> takes = PackagedTakes.catalogue();
        for (int i = 0; i < takes.size(); i += EVERY) {
            if (takes.get(i).instrument().playing() == Playing.PLUCKED) {
                Take take = takes.get(i).withRoom(-80, i).withPeak(-30)
                    .playing(List.of(PhraseKind.SCALE, PhraseKind.MELODY), List.of(Dynamics.USUAL, Dynamics.SOFT));
                float[] clean = PackagedTakes.samples(take);
                SoundSketch hum = new SoundSketch(take.sampleRateHz(), (double) clean.length / take.sampleRateHz(), i).hum(50.02, -60);
                score.add(PackagedTakes.notes(take), NoteScore.read(Signals.add(hum.samples, clean), take.sampleRateHz()));
            }
        }
        AccuracyTable.write("notes-over-hum", HEAD + score.row("all") + "\n");
        assertThat(score.fMeasure()).isGreaterThanOrEqualTo(0.9);
        assertThat(score.pitchShare()).isGreaterThanOrEqualTo(0.85);
    }

    private static NoteScore score(String name, Playing playing, int every, PhraseKind... kinds) {
        return score(name, playing, every, TOLERANCE_SECONDS, kinds);
    }

    private static NoteScore score(String name, Playing playing, int every, double toleranceSeconds, PhraseKind... kinds) {
        NoteScore all = new NoteScore(toleranceSeconds);
        StringBuilder table = new StringBuilder(HEAD);
        for (SampledBank bank : SampledBank.values()) {
            NoteScore ofBank = new NoteScore(toleranceSeconds);
            List<Take> takes = PackagedTakes.catalogue();
            for (int i = 0; i < takes.size(); i++) {
                Take take = takes.get(i).withRoom(-75, i);
                if (i % every == 0 && take.voice().bank() == bank && take.instrument().playing() == playing) {
                    ofBank.add(NoteScore.of(take.playing(List.of(kinds), List.of(Dynamics.USUAL, Dynamics.SOFT)), toleranceSeconds));
                }
            }
            if (ofBank.events == 0) {
                continue;
            }
            table.append(ofBank.row(bank.name())).append('\n');
            all.add(ofBank);
        }
        AccuracyTable.write("notes-" + name, table.append(all.row("all")).append('\n'));
        return all;
    }
}
