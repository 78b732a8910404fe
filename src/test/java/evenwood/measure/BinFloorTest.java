package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class BinFloorTest {
    private static final HopGrid GRID = new HopGrid(48_000);
    private static final float HUM = 1e-6f;

    @Test
    void whatIsAlwaysThereIsFloorAndWhatComesAndGoesIsNot() {
        BinFloor floor = new BinFloor(GRID, 2);
        for (int hop = 0; hop < GRID.hopsIn(60); hop++) {
            floor.accept(new float[] {HUM, hop % 20 < 15 ? 1e-2f : 0});
        }
        assertThat(floor.floor()).containsExactly(HUM, 0);
    }

    @Test
    void nothingIsFloorInTheFirstThreeSeconds() {
        BinFloor floor = new BinFloor(GRID, 1);
        for (int hop = 0; hop < GRID.hopsIn(2.9); hop++) {
            floor.accept(new float[] {HUM});
        }
        assertThat(floor.floor()).containsExactly(0);
    }

    @Test
    void louderHumIsFloorAfterHalfAMinuteAndSofterHumAtOnce() {
        BinFloor floor = new BinFloor(GRID, 1);
        hear(floor, HUM, 40);
        hear(floor, 4 * HUM, 20);
        assertThat(floor.floor()).containsExactly(HUM);
        hear(floor, 4 * HUM, 12);
        assertThat(floor.floor()).containsExactly(4 * HUM);
        hear(floor, HUM / 4, GRID.hopSeconds());
        assertThat(floor.floor()).containsExactly(HUM / 4);
    }

    private static void hear(BinFloor floor, float power, double seconds) {
        for (int hop = 0; hop < GRID.hopsIn(seconds); hop++) {
            floor.accept(new float[] {power});
        }
    }
}
