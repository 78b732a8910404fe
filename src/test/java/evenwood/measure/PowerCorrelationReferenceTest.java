package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** The sum r(τ) = Σ p(k)·cos(π·k·τ/size), written out. */
class PowerCorrelationReferenceTest {
    @Test
    void everyLagIsTheSumOfCosines() {
        for (int size : new int[] {256, 1024}) {
            SplittableRandom random = new SplittableRandom(size);
            float[] power = new float[size / 2];
            double whole = 0;
            for (int k = 0; k < power.length; k++) {
                power[k] = (float) random.nextDouble();
                whole += power[k];
            }
            float[] correlation = new PowerCorrelation(size).of(power);
            for (int lag = 0; lag < size; lag++) {
                double sum = 0;
                for (int k = 0; k < power.length; k++) {
                    sum += (k == 0 ? 0.5 : 1) * power[k] * Math.cos(Math.PI * k * lag / size);
                }
                assertThat(correlation[lag] / whole).as("lag %d of %d", lag, size).isCloseTo(sum / whole, within(1e-6));
            }
        }
    }
}
