package evenwood.live;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class GapLogTest {
    @Test
    void aLoosePlugForHoursKeepsTheSumAndTheLatest() {
        GapLog log = new GapLog();
        for (int i = 0; i < 10_000; i++) {
            log.add(LiveGap.of(LiveGap.Cause.DEVICE_AWAY, i * 1_000L, 10, 1_000));
        }
        assertThat(log.picture().lostFrames()).isEqualTo(100_000);
        assertThat(log.picture().latest()).hasSize(GapLog.KEPT);
        assertThat(log.picture().latest().get(GapLog.KEPT - 1).startSeconds()).isEqualTo(9_999);
    }

    @Test
    void anOpenGapIsShownButNotKept() {
        GapLog log = new GapLog();
        GapLog.Picture shown = GapLog.with(log.picture(), LiveGap.of(LiveGap.Cause.DEVICE_AWAY, 0, 5, 1_000));
        assertThat(shown.lostFrames()).isEqualTo(5);
        assertThat(log.picture().lostFrames()).isZero();
    }
}
