package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class WeightedQuantilesReferenceTest {
    private static final double[] VALUES = {-24.1, -9.1, -31.2, -28.9, -28.4, -25.0, -22.2, -20.7, -17.5, -12.3};

    /** {@code scipy.stats.mstats.hdquantiles(sorted(VALUES), prob=[.1, .5, .95])}, scipy 1.17.1. */
    @Test
    void equalWeightsGiveTheEstimateOfHarrellAndDavis() {
        double[] weights = new double[VALUES.length];
        Arrays.fill(weights, 0.3);
        WeightedQuantiles quantiles = WeightedQuantiles.of(VALUES, weights, VALUES.length);
        assertThat(quantiles.at(0.1)).isCloseTo(-30.103892886653377, within(1e-5));
        assertThat(quantiles.at(0.5)).isCloseTo(-22.942485676031747, within(1e-5));
        assertThat(quantiles.at(0.95)).isCloseTo(-9.838265839450827, within(1e-5));
    }

    @Test
    void aValueWithoutWeightIsNotThere() {
        double[] with = Arrays.copyOf(VALUES, VALUES.length + 1);
        with[VALUES.length] = -60;
        double[] weights = new double[with.length];
        Arrays.fill(weights, 0, VALUES.length, 1);
        assertThat(WeightedQuantiles.of(with, weights, VALUES.length).at(0.1)).isCloseTo(-30.103892886653377, within(1e-5));
        assertThat(WeightedQuantiles.of(new double[] {-20}, new double[1], 1).areKnown()).isFalse();
    }

    /** The law is so narrow then that most of it is not worked out. */
    @Test
    void tenThousandValuesHaveTheirQuantileWhereItIs() {
        double[] values = new double[10_000];
        double[] weights = new double[values.length];
        Arrays.setAll(values, i -> (i * 7919 % values.length + 0.5) / values.length);
        Arrays.fill(weights, 0.5);
        for (double share : new double[] {0.1, 0.5, 0.95}) {
            assertThat(WeightedQuantiles.of(values, weights, values.length).at(share)).isCloseTo(share, within(1e-4));
        }
    }
}
