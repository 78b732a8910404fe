package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.eq.EqFilter;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Differences drawn as instruments really differ ({@link ToneSpread#OF_INSTRUMENTS}), with and without a pickup's load. */
class LoadedPickupTest {
    private static final double LOWEST_HZ = 82.4;
    /** Half-widths as targets of many sources have them. */
    private static final double HALF_WIDTH_DB = 6;
    private static final int DRAWS = 400;
    private static final double PRIOR = 0.15;

    @Test
    void anUnloadedPickupIsHardlyEverCalledLoaded() {
        assertThat(share(hz -> 0, PRIOR)).isLessThan(0.02);
    }

    /** Some instruments lie far off ({@link ToneSpread#OF_INSTRUMENTS}): Student's distribution with 5 degrees of freedom. */
    @Test
    void anOddInstrumentIsHardlyEverCalledLoaded() {
        SplittableRandom random = new SplittableRandom(11);
        assertThat(share(drawn(hz -> 0, 0, OptionalDouble.empty(), PRIOR, 10 * DRAWS, () -> {
            double square = 0;
            for (int i = 0; i < ToneSpread.OF_INSTRUMENTS.freedom(); i++) {
                square += Math.pow(random.nextGaussian(), 2);
            }
            return Math.sqrt(ToneSpread.OF_INSTRUMENTS.freedom() / square);
        }))).isLessThan(0.004);
    }

    /** A bass played high has no bass to lose: what lies under its lowest note says nothing. */
    @Test
    void whatWasNotPlayedIsNotMissed() {
        ToneComparison high = LoadedPickup.played(comparison(hz -> hz < 230 ? -25 : 0), 250);
        assertThat(high.difference().bands()).allMatch(band -> band.weight() == (band.centreHz() > 230 ? 1 : 0));
        assertThat(LoadedPickup.of(high, 0, OptionalDouble.empty(), 6.7, PRIOR).orElseThrow().probability()).isLessThan(0.2);
        ToneComparison low = comparison(hz -> 0);
        assertThat(LoadedPickup.played(low, 0)).isSameAs(low);
        assertThat(LoadedPickup.played(low, 70)).isSameAs(low);
    }

    /** A shelf turned down takes the bass to a new level; a load takes it down for ever. */
    @Test
    void bassTurnedDownIsHardlyEverCalledLoaded() {
        EqFilter shelf = EqFilter.lowShelf(250, 0.7, -9);
        assertThat(share(hz -> shelf.responseDb(hz, 48_000), PRIOR)).isLessThan(0.1);
    }

    /** 15 nF into 10 kΩ: 1061 Hz; 1 nF into 10 kΩ and a microphone input: some kHz. Heavy tails cost some of the lesser loads. */
    @ParameterizedTest
    @CsvSource({"1061, 0.85", "3500, 0.95"})
    void aPickupOnALowImpedanceIsCalledLoaded(double cornerHz, double least) {
        assertThat(share(highPass(cornerHz), PRIOR)).isGreaterThan(least);
    }

    @Test
    void theCornerIsFoundWithinAnOctave() {
        List<Double> corners = new ArrayList<>();
        for (LoadedPickup each : drawn(highPass(1061), 0, OptionalDouble.empty(), PRIOR)) {
            each.heardCornerHz().ifPresent(corners::add);
        }
        corners.sort(null);
        assertThat(corners).hasSizeGreaterThan(DRAWS / 2);
        assertThat(corners.get(corners.size() / 2)).isBetween(530.0, 2122.0);
    }

    /** A level 8 dB under the prediction makes it surer, one that is as predicted makes it less likely. */
    @Test
    void theLevelSpeaksToo() {
        double without = mean(drawn(highPass(700), 0, OptionalDouble.empty(), PRIOR));
        assertThat(mean(drawn(highPass(700), 0, OptionalDouble.of(-8), PRIOR))).isGreaterThan(without);
        assertThat(mean(drawn(hz -> 0, 0, OptionalDouble.of(0), PRIOR))).isLessThan(mean(drawn(hz -> 0, 0, OptionalDouble.empty(), PRIOR)));
    }

    /** Where the chain itself loads the pickup, that is said with the corner it predicts. */
    @Test
    void aLoadThatIsPredictedAndHeardIsTold() {
        List<LoadedPickup> loaded = drawn(highPass(1061), 1061, OptionalDouble.empty(), PRIOR);
        assertThat(mean(loaded)).isGreaterThan(0.8);
        Finding finding = loaded.get(0).finding(false, Optional.empty()).orElseThrow();
        assertThat(finding.fault()).isEqualTo(Fault.LOADED_PICKUP);
        assertThat(finding.evidence().key()).isEqualTo("loaded-pickup.predicted");
        assertThat((double) finding.evidence().figures().get(0)).isCloseTo(1061, within(0.1));
    }

    @Test
    void aTakeThatHasBassInSpiteOfThePredictionIsNotCalledLoaded() {
        assertThat(mean(drawn(hz -> 0, 1061, OptionalDouble.empty(), PRIOR))).isLessThan(0.3);
    }

    /** 1.2 nF into 100 kΩ: 1/(2πRC) = 1326 Hz; and a level 20 dB low. */
    @Test
    void withoutAChainABassThatFallsAndALowLevelAreToldButNeverSure() {
        double cornerHz = 1 / (2 * Math.PI * 100e3 * 1.2e-9);
        Finding finding = LoadedPickup.ofUnknownChain(comparison(highPass(cornerHz)), -20).orElseThrow().finding(true, Optional.empty()).orElseThrow();
        assertThat(finding.probability()).isBetween(0.5, 0.85);
        assertThat(finding.severity()).isNotEqualTo(Severity.STRONG);
        assertThat(finding.evidence().key()).isEqualTo("loaded-pickup.evidence");
        assertThat((double) finding.evidence().figures().get(0)).isBetween(1000.0, 1800.0);
    }

    @Test
    void withoutAChainALowLevelAloneIsNone() {
        assertThat(LoadedPickup.ofUnknownChain(comparison(hz -> 0), -30).orElseThrow().finding(true, Optional.empty())).isEmpty();
    }

    private static ToneComparison comparison(DoubleUnaryOperator differenceDb) {
        return new ToneComparison(ToneComparison.Against.INSTRUMENT, "steel-string-guitar", LOWEST_HZ, ToneSpread.OF_INSTRUMENTS, Map.of(),
            new ToneDifference(ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream().filter(band -> band.centreHz() > 75 && band.centreHz() < 11_000)
                .map(band -> new ToneDifference.Band(band, differenceDb.applyAsDouble(band.centreHz()), HALF_WIDTH_DB, 4, 1)).toList()));
    }

    private static DoubleUnaryOperator highPass(double cornerHz) {
        return hz -> -10 * Math.log10(1 + Math.pow(cornerHz / hz, 2));
    }

    private static double share(DoubleUnaryOperator shape, double prior) {
        return share(drawn(shape, 0, OptionalDouble.empty(), prior));
    }

    private static double share(List<LoadedPickup> drawn) {
        return drawn.stream().filter(each -> each.finding(false, Optional.empty()).filter(finding -> finding.severity() != Severity.SLIGHT).isPresent()).count()
            / (double) drawn.size();
    }

    private static double mean(List<LoadedPickup> loaded) {
        return loaded.stream().mapToDouble(LoadedPickup::probability).average().orElseThrow();
    }

    private static List<LoadedPickup> drawn(DoubleUnaryOperator shape, double expectedHz, OptionalDouble level, double prior) {
        return drawn(shape, expectedHz, level, prior, DRAWS, () -> 1);
    }

    private static List<LoadedPickup> drawn(DoubleUnaryOperator shape, double expectedHz, OptionalDouble level, double prior, int draws, DoubleSupplier scale) {
        List<ThirdOctave> bands = ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream().filter(band -> band.centreHz() > 75 && band.centreHz() < 11_000).toList();
        double deviation = HALF_WIDTH_DB / 1.96;
        Array2DRowRealMatrix covariance = new Array2DRowRealMatrix(bands.size(), bands.size());
        for (int i = 0; i < bands.size(); i++) {
            for (int j = 0; j < bands.size(); j++) {
                covariance.setEntry(i, j, deviation * deviation * ToneSpread.OF_INSTRUMENTS.correlation(bands.get(i).index() - bands.get(j).index()));
            }
        }
        var root = new CholeskyDecomposition(covariance).getL();
        SplittableRandom random = new SplittableRandom(5);
        List<LoadedPickup> loaded = new ArrayList<>();
        for (int draw = 0; draw < draws; draw++) {
            double[] normal = new double[bands.size()];
            java.util.Arrays.setAll(normal, i -> random.nextGaussian());
            var spread = root.operate(new ArrayRealVector(normal)).mapMultiply(scale.getAsDouble());
            List<ToneDifference.Band> differences = new ArrayList<>();
            for (int i = 0; i < bands.size(); i++) {
                differences.add(new ToneDifference.Band(bands.get(i), shape.applyAsDouble(bands.get(i).centreHz()) + spread.getEntry(i), HALF_WIDTH_DB, 3, 1));
            }
            ToneComparison tone = new ToneComparison(ToneComparison.Against.INSTRUMENT, "steel-string-guitar", LOWEST_HZ, ToneSpread.OF_INSTRUMENTS, Map.of(),
                new ToneDifference(differences));
            loaded.add(LoadedPickup.of(tone, expectedHz, level, 6.7, prior).orElseThrow());
        }
        return loaded;
    }
}
