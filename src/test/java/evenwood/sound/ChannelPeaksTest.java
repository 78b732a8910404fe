package evenwood.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class ChannelPeaksTest {
    private static final double SILENT = Double.NEGATIVE_INFINITY;

    @Test
    void aSilentChannelBesideASoundingOnePointsThere() {
        ChannelPeaks peaks = new ChannelPeaks(1, List.of(SILENT, -12.0, -30.0));
        assertThat(peaks.isSilent()).isTrue();
        assertThat(peaks.farLouderChannel()).hasValue(2);
    }

    @Test
    void crosstalkFortyDecibelsDownPointsToItsSource() {
        assertThat(new ChannelPeaks(2, List.of(-6.0, -46.0)).farLouderChannel()).hasValue(1);
        assertThat(new ChannelPeaks(2, List.of(-6.0, -45.9)).farLouderChannel()).isEmpty();
    }

    @Test
    void theLoudestChannelAndAnAllSilentFilePointNowhere() {
        assertThat(new ChannelPeaks(1, List.of(-6.0, -90.0)).farLouderChannel()).isEmpty();
        assertThat(new ChannelPeaks(1, List.of(SILENT, SILENT)).farLouderChannel()).isEmpty();
    }

    @Test
    void aPeakThatIsNoNumberIsRefused() {
        assertThatThrownBy(() -> new ChannelPeaks(1, List.of(Double.NaN))).isInstanceOf(IllegalArgumentException.class)
            .hasMessage("channel peaks: channel=1, peakDbfs=[NaN], but the channel must be one of them and all must be numbers "
                + "(−Infinity for silence)");
    }
}
