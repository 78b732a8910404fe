package evenwood.ui.scale;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScalesTest {
    @ParameterizedTest
    @CsvSource({"-60, 0", "-30, 0.5", "0, 1", "-90, 0", "6, 1", "-Infinity, 0"})
    void aLevelLiesBetweenBottomAndTop(double db, double part) {
        assertThat(new LevelScale(-60, 0).part(db)).isEqualTo(part);
    }

    @Test
    void ticksAreRoundAndInside() {
        assertThat(new LevelScale(-72, 3).ticks(12)).containsExactly(-72, -60, -48, -36, -24, -12, 0);
        assertThat(new LevelScale(-50, -10).ticks(12)).containsExactly(-48, -36, -24, -12);
    }

    @Test
    void everyOctaveIsEquallyWide() {
        FrequencyScale axis = FrequencyScale.INSTRUMENTS;
        double octave = axis.part(200) - axis.part(100);
        assertThat(axis.part(400) - axis.part(200)).isCloseTo(octave, within(1e-12));
        assertThat(axis.part(8000) - axis.part(4000)).isCloseTo(octave, within(1e-12));
        assertThat(axis.hz(axis.part(440))).isCloseTo(440, within(1e-9));
        assertThat(axis.part(1)).isZero();
        assertThat(axis.part(1e6)).isEqualTo(1);
    }

    @Test
    void aShortTakeFillsTheAxisFromItsStart() {
        TimeScale time = TimeScale.endingAt(20, 60);
        assertThat(time.fromSeconds()).isZero();
        assertThat(time.part(30)).isEqualTo(0.5);
        assertThat(TimeScale.endingAt(400, 300).seconds(0)).isEqualTo(100);
        assertThat(TimeScale.endingAt(400, 300).seconds(1)).isEqualTo(400);
    }

    @ParameterizedTest
    @CsvSource({"0, -135", "0.5, 0", "1, 135", "2, 135", "-1, -135"})
    void aKnobTurnsFromLowerLeftOverTheTopToLowerRight(double part, double degrees) {
        assertThat(DialArc.degrees(part)).isEqualTo(degrees);
    }

    @Test
    void whereAPointerPointsIsWhereItStands() {
        assertThat(DialArc.part(0, -10)).isCloseTo(0.5, within(1e-12));
        for (double part : new double[] {0.1, 0.3, 0.7, 0.9}) {
            double angle = Math.toRadians(DialArc.degrees(part));
            assertThat(DialArc.part(Math.sin(angle), -Math.cos(angle))).isCloseTo(part, within(1e-12));
        }
    }

    @Test
    void wordsThatWouldCoverEachOtherStandInRows() {
        TagRows rows = new TagRows(0, 500, 5);
        assertThat(rows.place(100, 80)).isEqualTo(new TagRows.Place(0, 60));
        assertThat(rows.place(120, 80)).isEqualTo(new TagRows.Place(1, 80));
        assertThat(rows.place(300, 80)).isEqualTo(new TagRows.Place(0, 260));
        assertThat(rows.rows()).isEqualTo(2);
    }

    @Test
    void aWordNearTheEdgeStaysInside() {
        TagRows rows = new TagRows(10, 200, 5);
        assertThat(rows.place(12, 60).leftPx()).isEqualTo(10);
        assertThat(rows.place(199, 60).leftPx()).isEqualTo(140);
    }

    @Test
    void impossibleScalesAreRefused() {
        assertThatThrownBy(() -> new LevelScale(0, -10)).hasMessage("level scale: lowestDb=0.0, highestDb=-10.0, but low < high is needed");
        assertThatThrownBy(() -> new FrequencyScale(0, 10)).hasMessageContaining("0 < low < high");
        assertThatThrownBy(() -> new TimeScale(0, 0)).hasMessageContaining("must be positive");
    }
}
