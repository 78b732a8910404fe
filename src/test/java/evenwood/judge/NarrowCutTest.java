package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.Note;
import evenwood.measure.NoteName;
import evenwood.takes.ReadingsSketch;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class NarrowCutTest {
    @Test
    void aNoteThatJumpsOutEveryTimeGetsACutAtItsPitch() {
        List<NarrowCut> cuts = NarrowCut.of(new ReadingsSketch().notes(scales(9)).readings());
        assertThat(cuts).hasSize(1);
        assertThat(cuts.get(0).note()).isEqualTo("A2");
        assertThat(cuts.get(0).frequencyHz()).isCloseTo(110, within(0.5));
        assertThat(cuts.get(0).changeDb()).isBetween(-9.0, -4.0);
    }

    @Test
    void evenPlayingNeedsNone() {
        assertThat(NarrowCut.of(new ReadingsSketch().notes(scales(2)).readings())).isEmpty();
    }

    @Test
    void theJudgeNamesItByWhereItLies() {
        Verdict verdict = new Judge(TargetWindow.DEFAULT).judge(new ReadingsSketch().notes(scales(9)).readings());
        assertThat(verdict.findings()).extracting(Finding::fault).containsExactly(Fault.BOOMY);
        assertThat(verdict.findings().get(0).bandHz()).hasValueSatisfying(band -> assertThat(band.lowHz()).isBetween(100.0, 110.0));
    }

    private static List<Note> scales(double louderDb) {
        List<Note> notes = new ArrayList<>();
        for (int scale = 0; scale < 4; scale++) {
            for (int midi = 40; midi < 60; midi += 1) {
                double level = -25 + (midi == 45 ? louderDb : 0);
                notes.add(new Note(notes.size() * 0.4, notes.size() * 0.4 + 0.3, NoteName.frequencyHz(midi), midi, 0.95, false, level + 5, level));
            }
        }
        return notes;
    }
}
