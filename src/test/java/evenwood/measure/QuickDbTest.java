package evenwood.measure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class QuickDbTest {
    @Test
    void agreesWithTheLogarithmToAThousandth() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 200_000; i++) {
            double power = Math.pow(10, random.nextDouble(-19.9, 6));
            assertThat(QuickDb.of(power)).isCloseTo(10 * Math.log10(power), within(0.001));
        }
        assertThat(QuickDb.of(1)).isZero();
    }

    @Test
    void silenceIsMinusTwoHundred() {
        assertThat(QuickDb.of(0)).isCloseTo(-200, within(0.001));
        assertThat(QuickDb.of(1e-30)).isCloseTo(-200, within(0.001));
    }
}
