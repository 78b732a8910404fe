package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.eq.EqFilter;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToneRuleTest {
    private static final double GUITAR_HZ = 82.4;
    /** Bands that are off by little and each by itself: a target that is known well, such as another take on the same rig. */
    private static final ToneSpread WELL_KNOWN = new ToneSpread(0.3, 3, 0, Double.POSITIVE_INFINITY);

    @Test
    void noDifferenceIsNoFinding() {
        assertThat(findings(hz -> 0, 3)).isEmpty();
    }

    @Test
    void aLevelDifferenceIsNoMatterOfTone() {
        assertThat(findings(hz -> 17, 3)).isEmpty();
    }

    static Stream<Arguments> faults() {
        return Stream.of(Arguments.of(Fault.BOOMY, EqFilter.peak(120, 1, 9)), Arguments.of(Fault.BOXY, EqFilter.peak(440, 1, 9)),
            Arguments.of(Fault.NASAL, EqFilter.peak(1000, 1, 9)), Arguments.of(Fault.HARSH, EqFilter.peak(3200, 1, 9)),
            Arguments.of(Fault.THIN, EqFilter.lowShelf(240, 0.7, -9)), Arguments.of(Fault.DULL, EqFilter.highShelf(3500, 0.7, -9)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void eachFaultIsCalledByItsWordAlone(Fault fault, EqFilter filter) {
        List<Finding> findings = findings(hz -> filter.responseDb(hz, 48_000), 3);
        assertThat(findings).extracting(Finding::fault).containsExactly(fault);
        assertThat(findings.get(0).probability()).isGreaterThan(0.8);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("faults")
    void whatIsKnownPoorlyIsNotCalledClear(Fault fault, EqFilter filter) {
        assertThat(findings(hz -> filter.responseDb(hz, 48_000), 30)).noneMatch(finding -> finding.severity() != Severity.SLIGHT);
    }

    @Test
    void anOverallTiltIsOneFinding() {
        List<Finding> findings = findings(hz -> -4 * Math.log(hz / 1000) / Math.log(2), 3);
        assertThat(findings).extracting(Finding::fault).first().isIn(Fault.DULL, Fault.BOOMY);
        assertThat(findings.stream().filter(finding -> finding.severity() != Severity.SLIGHT)).hasSizeLessThanOrEqualTo(2);
    }

    @Test
    void bandsThatNobodyHeardDoNotCount() {
        List<ToneDifference.Band> bands = ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream()
            .map(band -> new ToneDifference.Band(band, band.centreHz() > 90 && band.centreHz() < 180 ? 12 : 0, 3, 3, 0)).toList();
        assertThat(ToneRule.findings(comparison(new ToneDifference(bands)))).isEmpty();
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void anyDifferenceGivesProbabilitiesAndAtMostThreeFindings(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Finding> findings = findings(hz -> 40 * random.nextDouble() - 20, 1 + 8 * random.nextDouble());
        assertThat(findings).hasSizeLessThanOrEqualTo(3).allMatch(finding -> finding.probability() >= 0 && finding.probability() <= 1);
        assertThat(findings).extracting(Finding::fault).doesNotHaveDuplicates();
    }

    /** On a fiddle the bass lies where the list has boxy: 330 Hz is in both places, and one of the words must be said. */
    @Test
    void whereTwoWordsOverlapOneOfThemIsSaidAndNotNeither() {
        EqFilter filter = EqFilter.peak(330, 1, 9);
        List<Finding> findings = ToneRule.findings(new ToneComparison(ToneComparison.Against.TAKE, "another", 196, ToneSpread.OF_TAKES, Map.of(),
            difference(hz -> filter.responseDb(hz, 48_000), 3)));
        assertThat(findings).hasSize(1);
        assertThat(findings.get(0).fault()).isIn(Fault.BOOMY, Fault.BOXY);
        assertThat(findings.get(0).probability()).isGreaterThan(0.85);
    }

    @Test
    void boomyAndThinMoveUpWithAHighInstrument() {
        assertThat(ToneRegion.BOOMY.bandHz(GUITAR_HZ)).isEqualTo(new BandHz(80, 200));
        assertThat(ToneRegion.BOOMY.bandHz(196).lowHz()).isGreaterThan(150);
        assertThat(ToneRegion.NASAL.bandHz(196)).isEqualTo(new BandHz(600, 1500));
    }

    private static List<Finding> findings(java.util.function.DoubleUnaryOperator differenceDb, double halfWidthDb) {
        return ToneRule.findings(comparison(difference(differenceDb, halfWidthDb)));
    }

    private static ToneDifference difference(java.util.function.DoubleUnaryOperator differenceDb, double halfWidthDb) {
        return new ToneDifference(ThirdOctave.FROM_50_HZ_TO_16_KHZ.stream()
            .map(band -> new ToneDifference.Band(band, differenceDb.applyAsDouble(band.centreHz()), halfWidthDb, 3, 1)).toList());
    }

    private static ToneComparison comparison(ToneDifference difference) {
        return new ToneComparison(ToneComparison.Against.INSTRUMENT, "steel-string-guitar", GUITAR_HZ, WELL_KNOWN, Map.of(), difference);
    }
}
