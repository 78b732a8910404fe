package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Against numpy 2.4: linalg.lstsq on the same table, and the slope over its standard error. */
class LevelTrendReferenceTest {
    private static final int LEVEL = 0;
    private static final int VALUE = 1;
    private static final int COLOUR = 2;
    private static final int ROWS = 24;

    @Test
    void slopesAndClarityAreThoseOfLeastSquares() {
        HopHistory rows = table(true);
        LevelTrend trend = LevelTrend.of(rows, row -> rows.get(row, VALUE), LEVEL, 12, 5, COLOUR);
        assertThat(trend.belowBend()).isCloseTo(0.32676556, within(1e-5));
        assertThat(trend.aboveBend()).isCloseTo(-0.2425574, within(1e-5));
        assertThat(trend.clarity()).isCloseTo(-5.3466344, within(1e-3));
    }

    @Test
    void withoutScatterTheSlopesPutInComeOut() {
        HopHistory rows = table(false);
        LevelTrend trend = LevelTrend.of(rows, row -> rows.get(row, VALUE), LEVEL, 12, 5, COLOUR);
        assertThat(trend.belowBend()).isCloseTo(0.3, within(1e-5));
        assertThat(trend.aboveBend()).isCloseTo(-0.2, within(1e-5));
        assertThat(trend.clarity()).isEqualTo(-15);
    }

    @Test
    void rowsWithoutAValueAreLeftOut() {
        HopHistory rows = table(true);
        LevelTrend whole = LevelTrend.of(rows, row -> rows.get(row, VALUE), LEVEL, 8, 5, COLOUR);
        LevelTrend part = LevelTrend.of(rows, row -> rows.get(row, LEVEL) > -0.5 - 8 ? rows.get(row, VALUE) : Double.NEGATIVE_INFINITY, LEVEL, 12, 5, COLOUR);
        assertThat(part).isEqualTo(whole);
    }

    @Test
    void tooFewRowsTellNothing() {
        HopHistory rows = new HopHistory(4, 3);
        assertThat(LevelTrend.of(rows, row -> 1, LEVEL, 12, 5, COLOUR)).isEqualTo(new LevelTrend(0, 0, 0));
        assertThat(LevelTrend.stepAtTheTop(rows, row -> 1, LEVEL)).isZero();
    }

    @Test
    void theStepIsTheDifferenceOfTheLoudAndTheQuietMean() {
        HopHistory rows = table(true);
        assertThat(LevelTrend.stepAtTheTop(rows, row -> rows.get(row, LEVEL) > -3 ? 2.5 : -1, LEVEL)).isCloseTo(3.5, within(1e-12));
    }

    /** Levels 0, −0.5 … dB; value 1 + 0.3 below and −0.2 above the bend, + 0.1·colour, and scatter if wanted. */
    private static HopHistory table(boolean scatter) {
        HopHistory rows = new HopHistory(ROWS, 3);
        for (int i = 0; i < ROWS; i++) {
            double x = Math.min(0.5 - 0.5 * i, 1) + 5;
            double colour = (i * 7) % 5;
            long row = rows.append();
            rows.set(row, LEVEL, (float) (-0.5 * i));
            rows.set(row, COLOUR, (float) colour);
            rows.set(row, VALUE, (float) (1 + 0.3 * Math.min(x, 0) - 0.2 * Math.max(x, 0) + 0.1 * colour + (scatter ? ((i * 13) % 11 - 5) / 10.0 : 0)));
        }
        return rows;
    }
}
