package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CurveFitTest {
    static Stream<Integer> seeds() {
        return IntStream.range(0, 20).boxed();
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void theFiltersFollowWhatAnEqualiserDoes(int seed) {
        double[] curve = Differences.RESPONSE.db(Differences.someEq(new SplittableRandom(seed)));
        double[] fitted = Differences.RESPONSE.db(CurveFit.chain(curve, Differences.RESPONSE));
        for (int i = 0; i < curve.length; i++) {
            assertThat(fitted[i]).as("band %d", i).isCloseTo(curve[i], within(0.3));
        }
    }

    @Test
    void whatIsBeyondReachIsHeldAtTheLimit() {
        double[] curve = new double[Differences.BANDS.size()];
        java.util.Arrays.fill(curve, -80);
        assertThat(Differences.RESPONSE.db(CurveFit.chain(curve, Differences.RESPONSE))[10]).isCloseTo(-CurveFit.MOST_DB, within(0.5));
    }

    @Test
    void nothingToDoIsNoFilter() {
        assertThat(CurveFit.chain(new double[Differences.BANDS.size()], Differences.RESPONSE)).isEqualTo(EqChain.FLAT);
    }
}
