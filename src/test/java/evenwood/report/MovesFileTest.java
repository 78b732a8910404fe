package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.StoredMove;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.judge.TargetWindow;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MovesFileTest {
    @TempDir
    Path folder;

    @Test
    void whatCheckPrintsIsReadBack() throws IOException {
        Assessment assessment = new Coach(TargetWindow.DEFAULT).assess(new ReadingsSketch().truePeakDbtp(-30).readings());
        Path file = Files.writeString(folder.resolve("check.json"), CheckJson.of(assessment, Sentences.english()));
        List<StoredMove> moves = MovesFile.read(file);
        assertThat(moves).hasSize(assessment.moves().size()).isNotEmpty();
        assertThat(StoredMove.chain(moves)).isEqualTo(assessment.predicted().orElseThrow().change());
    }

    @Test
    void theArrayAloneIsReadWithEveryKind() throws IOException {
        EqChain chain = StoredMove.chain(MovesFile.read(Files.writeString(folder.resolve("moves.json"), """
            [ {"kind": "gain", "changeDb": -6}, {"kind": "volume", "fromDb": -3, "toDb": 1}, {"kind": "wiring", "control": "DI"},
              {"kind": "low-shelf", "frequencyHz": 120, "changeDb": -4}, {"kind": "high-shelf", "frequencyHz": 5000, "q": 0.7, "toDb": 2},
              {"kind": "peak", "frequencyHz": 420, "q": 1.4, "fromDb": 3, "toDb": -1, "changeDb": -4},
              {"kind": "notch", "frequencyHz": 180, "q": 14}, {"kind": "notch", "frequencyHz": 90, "q": 8, "changeDb": -6},
              {"kind": "high-pass", "control": "High-pass 90 Hz, order 3", "frequencyHz": 90, "q": 0.7071, "to": "90 Hz"},
              {"kind": "high-pass", "frequencyHz": 60, "to": "off", "why": ["unknown", {"fields": 1}]} ]""")));
        assertThat(chain.gainDb()).isEqualTo(-2);
        assertThat(chain.filters()).containsExactly(EqFilter.lowShelf(120, EqFilter.BUTTERWORTH_Q, -4), EqFilter.highShelf(5000, 0.7, 2),
            EqFilter.peak(420, 1.4, -3), EqFilter.peak(420, 1.4, -1), EqFilter.notch(180, 14), EqFilter.peak(90, 8, -6),
            new EqFilter(evenwood.eq.FilterKind.HIGH_PASS, 90, 0.7071, 0, 3));
        assertThat(chain.responseDb(420, 48_000)).isCloseTo(-2 - 4, within(1.0));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        {"a": 1}                                  | holds no moves
        [{"kind": "bell"}]                        | move 1: kind=bell, but one of gain, volume
        [{"kind": "peak", "changeDb": 3}]         | move 1: frequencyHz=missing, but 5.0 to 96000.0 is needed
        [{"kind": "gain", "changeDb": 900}]       | move 1: changeDb=900.0, but
        [{"kind": "gain", "changeDb": }]          | line 1 is no JSON
        """)
    void whatIsWrongIsSaidInOneLine(String text, String said) throws IOException {
        Path file = Files.writeString(folder.resolve("bad.json"), text);
        assertThatThrownBy(() -> MovesFile.read(file)).isInstanceOf(MovesFile.BadMoves.class)
            .hasMessageStartingWith("moves: " + file).hasMessageContaining(said).message().doesNotContain("\n");
    }

    @Test
    void aMissingFileIsSaid() {
        assertThatThrownBy(() -> MovesFile.read(folder.resolve("none.json"))).hasMessageContaining("none.json does not exist; check the spelling");
    }
}
