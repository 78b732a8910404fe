package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.ToneDifference;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LikelyToneTest {
    private static final int BAND = 12;

    @Test
    void aBandHeardUnsurelyLeansOnItsNeighbours() {
        double[] likely = new LikelyTone(bump(8, band -> band == BAND ? 8 : 1)).meanDb();
        assertThat(likely[BAND] - likely[BAND - 6]).isLessThan(2);
    }

    @Test
    void aNarrowBumpThatWasHeardSurelyStays() {
        double[] likely = new LikelyTone(bump(8, band -> 0.5)).meanDb();
        assertThat(likely[BAND] - likely[BAND - 6]).isCloseTo(8, within(0.5));
    }

    @Test
    void ofABandNobodyKnowsAnythingAboutItsNeighboursTell() {
        double[] likely = new LikelyTone(bump(8, band -> band == BAND ? Double.POSITIVE_INFINITY : 0.5)).meanDb();
        assertThat(likely[BAND]).isCloseTo((likely[BAND - 1] + likely[BAND + 1]) / 2, within(0.3));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void aLevelCommonToAllChangesNothingElse(int seed) {
        double[] likely = new LikelyTone(random(seed, 0)).meanDb();
        double[] louder = new LikelyTone(random(seed, 6)).meanDb();
        for (int i = 0; i < likely.length; i++) {
            assertThat(louder[i] - likely[i]).isCloseTo(6, within(0.02));
        }
    }

    /** The same by the other form of the same theorem: precisions add up, and means weigh by their precisions. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3, 4, 5})
    void meanAndCovarianceAreThoseOfPrecisionsAddedUp(int seed) {
        ToneDifference heard = random(seed, 0);
        int n = heard.bands().size();
        RealMatrix before = MatrixUtils.createRealMatrix(n, n);
        RealMatrix hearing = MatrixUtils.createRealMatrix(n, n);
        RealVector difference = MatrixUtils.createRealVector(new double[n]);
        for (int i = 0; i < n; i++) {
            difference.setEntry(i, heard.bands().get(i).differenceDb());
            hearing.setEntry(i, i, 1 / Math.pow(heard.bands().get(i).uncertaintyDb() / 1.96, 2));
            for (int j = 0; j < n; j++) {
                before.setEntry(i, j, 16 * Math.exp(-Math.abs(i - j) / 6.0) + 10_000); // 4 dB, 1/e over six third octaves, any level
            }
        }
        RealMatrix covariance = MatrixUtils.inverse(MatrixUtils.inverse(before).add(hearing));
        RealVector mean = covariance.operate(hearing.operate(difference));
        LikelyTone likely = new LikelyTone(heard);
        for (int i = 0; i < n; i++) {
            assertThat(likely.meanDb()[i]).isCloseTo(mean.getEntry(i), within(1e-6));
            assertThat(likely.covariance().getEntry(i, (i + 3) % n)).isCloseTo(covariance.getEntry(i, (i + 3) % n), within(1e-6));
        }
    }

    private static ToneDifference bump(double db, ToDoubleFunction<Integer> uncertaintyDb) {
        return new ToneDifference(Differences.BANDS.stream().map(band -> {
            int place = Differences.BANDS.indexOf(band);
            return new ToneDifference.Band(band, place == BAND ? db : 0, uncertaintyDb.applyAsDouble(place), 1, 1);
        }).toList());
    }

    private static ToneDifference random(int seed, double levelDb) {
        SplittableRandom random = new SplittableRandom(seed);
        return new ToneDifference(Differences.BANDS.stream().map(band -> new ToneDifference.Band(band, levelDb + 12 * random.nextDouble() - 6,
            0.5 + 5 * random.nextDouble(), 1, 1)).toList());
    }
}
