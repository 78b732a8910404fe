package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import java.util.List;
import org.junit.jupiter.api.Test;

class BandsBeyondTest {
    private static final ToneDifference HEARD = new ToneDifference(List.of(band(160, 6), band(200, 5), band(16_000, 0)));

    @Test
    void theNextBandsCountLessAndLessAndNoneLiesOutside() {
        List<ToneDifference.Band> all = new BandsBeyond(HEARD).whole().bands();
        assertThat(all).extracting(each -> each.band().nominalHz()).containsExactly(80.0, 100.0, 125.0, 160.0, 200.0, 16_000.0);
        assertThat(all).extracting(ToneDifference.Band::weight).containsExactly(0.125, 0.25, 0.5, 1.0, 1.0, 1.0);
    }

    @Test
    void figuresAreGivenBackForTheHeardBandsOnly() {
        assertThat(new BandsBeyond(HEARD).heardOf(new double[] {1, 2, 3, 4, 5, 6})).containsExactly(4, 5, 6);
    }

    /** The slope of a bass shelf reaches 160 Hz; what it does to the low string that was not played counts as well. */
    @Test
    void whatLiesBeyondLeansOnItsNeighbours() {
        LikelyTone likely = new LikelyTone(new BandsBeyond(HEARD).whole());
        assertThat(likely.meanDb()[2]).isBetween(4.0, 7.0);
        assertThat(likely.covariance().getEntry(0, 0)).isGreaterThan(likely.covariance().getEntry(3, 3));
    }

    private static ToneDifference.Band band(double hz, double differenceDb) {
        return new ToneDifference.Band(ThirdOctave.containing(hz), differenceDb, 1, 1, 1);
    }
}
