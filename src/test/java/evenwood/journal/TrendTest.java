package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class TrendTest {
    @Test
    void stringsThatLoseTrebleSinceTheyWerePutOnAreTold() {
        History history = new History(1, 60);
        double put = history.lastDay() / 2;
        history.with(day -> day < put ? 0 : -5 * (day - put) / 60, History.NONE, History.NONE, History.NONE).event(put, EventKind.NEW_STRINGS);
        Suspicion found = Suspicion.strings(history::points, history.events()).orElseThrow();
        assertThat(found.since()).isPresent();
        assertThat(found.change().kind()).isEqualTo(Change.Kind.DRIFT);
        assertThat(found.change().lowest()).isLessThan(-4).isLessThan(found.change().amount());
        assertThat(found.change().highest()).isNegative().isGreaterThan(found.change().amount());
        assertThat(history.suspicions()).containsExactly(Suspicion.Kind.STRINGS_LOSE_TREBLE);
    }

    @Test
    void newStringsAreSeenAsAStepAtTheirDay() {
        History history = new History(2, 40);
        double put = history.lastDay() / 2;
        history.with(day -> day < put ? -4 : 0, History.NONE, History.NONE, History.NONE).event(put, EventKind.NEW_STRINGS);
        List<Change> changes = history.trend(Reading.TREBLE).changes();
        assertThat(changes).hasSize(1);
        assertThat(changes.get(0).kind()).isEqualTo(Change.Kind.AT_EVENT);
        assertThat(changes.get(0).event().orElseThrow().kind()).isEqualTo(EventKind.NEW_STRINGS);
        assertThat(changes.get(0).lowest()).isLessThan(4.0);
        assertThat(changes.get(0).highest()).isGreaterThan(4.0);
    }

    @Test
    void aJumpNobodyMarkedIsFoundNearItsDay() {
        History history = new History(3, 50);
        double day = history.lastDay() * 0.6;
        history.with(History.NONE, History.NONE, at -> at < day ? 0 : 6, History.NONE);
        Change change = history.trend(Reading.HISS).changes().get(0);
        assertThat(change.kind()).isEqualTo(Change.Kind.JUMP);
        assertThat(change.from()).isBefore(change.to());
        assertThat(history.suspicions()).containsExactly(Suspicion.Kind.CHANNEL_NOISIER);
    }

    /** Two or three in a hundred may say so by chance (docs/accuracy.md); of 100 no more than 8. */
    @Test
    void moreGainIsNoNoisierChannel() {
        long spoke = LongStream.range(0, 100).filter(seed -> {
            History history = new History(seed, 50);
            history.with(History.NONE, History.NONE, History.NONE, day -> 8 * day / history.lastDay());
            assertThat(history.trend(Reading.HISS).changes()).as("the hiss did rise").isNotEmpty();
            return !history.suspicions().isEmpty();
        }).count();
        assertThat(spoke).isLessThanOrEqualTo(8);
    }

    @Test
    void tooFewTakesSayNothing() {
        History history = new History(5, 7);
        history.with(day -> -day, History.NONE, History.NONE, History.NONE);
        assertThat(history.trend(Reading.TREBLE).isEnough()).isFalse();
        assertThat(history.trend(Reading.TREBLE).changes()).isEmpty();
        assertThat(Trend.of(Reading.ALL.get(0), List.of(), List.of()).changes()).isEmpty();
    }

    /** At 98 % two histories in a hundred may speak without cause; of 300 no more than 13 should (mean 6, three deviations above). */
    @Test
    void withoutAChangeItIsSilent() {
        long spoke = LongStream.range(0, 300).filter(seed -> {
            History history = new History(seed, 12 + (int) seed % 40).with(History.NONE, History.NONE, History.NONE, History.NONE);
            return !history.trend(Reading.TREBLE).changes().isEmpty();
        }).count();
        assertThat(spoke).isLessThanOrEqualTo(13);
    }

    /** The stated interval holds the truth: of 300 at 99 %, at least 291. */
    @Test
    void theIntervalOfAShiftHoldsTheTruth() {
        long holds = LongStream.range(0, 300).filter(seed -> {
            java.util.SplittableRandom random = new java.util.SplittableRandom(seed);
            double[] before = random.doubles(15).map(x -> 3 * x).toArray();
            double[] after = random.doubles(12).map(x -> 3 * x + 2).toArray();
            Shift shift = Shift.between(before, after, 0.99);
            return shift.lowest() <= 2 && shift.highest() >= 2;
        }).count();
        assertThat(holds).isGreaterThanOrEqualTo(291);
    }
}
