package evenwood.journal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.takes.ReadingsSketch;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class PracticeDaysTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 31);

    @Test
    void daysMinutesAndStreaksAreCounted() {
        assertThat(PracticeDays.of(on(0, 1, 1, 2, 5, 40), TODAY)).isEqualTo(new PracticeDays(50, 4, 3));
        assertThat(PracticeDays.of(on(1, 2), TODAY)).as("today is still young").isEqualTo(new PracticeDays(20, 2, 2));
        assertThat(PracticeDays.of(on(2, 3), TODAY).streakDays()).isZero();
        assertThat(PracticeDays.of(List.of(), TODAY)).isEqualTo(new PracticeDays(0, 0, 0));
    }

    @Test
    void aSittingIsHeldAgainstTheUsual() {
        List<Practice> all = on(0, 1, 2, 3);
        assertThat(PracticeDays.trebleAgainstUsual(all.get(0), all)).hasValueCloseTo(-9 - -11.0, within(1e-9));
        assertThat(PracticeDays.trebleAgainstUsual(all.get(0), all.subList(0, 3))).as("too few others").isEmpty();
    }

    @Test
    void aSittingIsMadeOfWhatWasHeard() {
        Practice made = Practice.of("u", KeptExamples.EVENING, "oud", new ReadingsSketch().playing(300, -22).readings());
        assertThat(made.figures().playingSeconds()).isCloseTo(300, within(0.1));
        assertThat(made.figures().usualDbfs()).isEqualTo(-20);
        assertThat(made.figures().truePeakDbtp()).isEqualTo(-9);
    }

    private static List<Practice> on(int... daysAgo) {
        return IntStream.range(0, daysAgo.length).mapToObj(i -> new Practice("p" + i, OffsetDateTime.parse("2026-03-31T18:00:00+02:00").minusDays(daysAgo[i]), "oud",
            new Practice.Figures(900, 600, 100, -30, -20, -10, -23, -3, -2, -9 - i, -6, 0))).toList();
    }
}
