package evenwood.coach.hunt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.rig.HuntTable;
import evenwood.rig.Presets;
import evenwood.takes.NoisyRig;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoiseHuntTest {
    private static final HuntTable TABLE = new Presets(Path.of("nowhere")).hunt("noise");
    private static final int SEEDS = 12;
    private static final int TRIALS = 6;

    /** A rig as physics has it, not as the table has it ({@link NoisyRig}); HuntEvaluation plants more of them, also with rig files. */
    @Test
    void thePlantedCauseIsMostlyFoundFirstWithinSixTrials() {
        Map<String, Integer> found = new TreeMap<>();
        for (String cause : NoisyRig.CAUSES) {
            for (int seed = 0; seed < SEEDS; seed++) {
                found.merge(cause, hunted(new NoisyRig(cause, 77L * seed + cause.hashCode())).hunt().ranking().get(0).cause().equals(cause) ? 1 : 0, Integer::sum);
            }
        }
        int sum = found.values().stream().mapToInt(Integer::intValue).sum();
        assertThat((double) sum / (SEEDS * NoisyRig.CAUSES.size())).as("%s of %d each", found, SEEDS).isGreaterThan(0.8);
        assertThat(found.values()).as("no cause is overlooked: %s", found).allMatch(times -> times > SEEDS / 3);
    }

    private static HuntProgress hunted(NoisyRig rig) {
        HuntProgress progress = HuntProgress.start(TABLE, RigFacts.ALL, rig.before(), Optional.empty());
        for (int trial = 0; trial < TRIALS && progress.next().isPresent(); trial++) {
            String next = progress.next().get();
            progress = progress.after(next, rig.after(next));
        }
        return progress;
    }

    @Test
    void aNoiseThatFallsWithTheGroundLiftIsAGroundLoop() {
        NoiseHunt hunt = hum().after(new TrialResult("ground-lift", -15, 1.5));
        assertThat(hunt.ranking().get(0).cause()).isEqualTo("ground-loop");
        assertThat(hunt.ranking().get(0).probability()).isGreaterThan(0.8);
    }

    @Test
    void aChangeWithinTheUncertaintySaysLittle() {
        double before = probability(buzz(), "mobile");
        double little = probability(buzz().after(new TrialResult("lights-off", -0.5, 4)), "mobile");
        assertThat(little).isBetween(before * 0.8, before * 1.25);
    }

    @Test
    void theSameResultsGiveTheSameRankingInAnyOrder() {
        TrialResult one = new TrialResult("touch-strings", -8, 1.5);
        TrialResult two = new TrialResult("other-cable", 0.3, 1.5);
        assertThat(buzz().after(one).after(two).ranking().get(0))
            .usingRecursiveComparison().withComparatorForType((a, b) -> Math.abs(a - b) < 1e-12 ? 0 : 1, Double.class)
            .isEqualTo(buzz().after(two).after(one).ranking().get(0));
    }

    @Test
    void whatNoKnownCauseExplainsIsBelievedOfNone() {
        NoiseHunt hunt = buzz().after(new TrialResult("other-cable", -15, 1.5)).after(new TrialResult("lights-off", -14, 1.5)).after(new TrialResult("ground-lift", -16, 1.5));
        assertThat(hunt.isSure()).isFalse();
        assertThat(hunt.unlisted()).isGreaterThan(0.5);
        assertThat(hunt.ranking().stream().mapToDouble(Suspect::probability).sum() + hunt.unlisted()).isCloseTo(1, within(1e-9));
    }

    @Test
    void whatCannotBeTriedIsNotAskedAgain() {
        NoiseHunt hunt = hum();
        String first = hunt.next().orElseThrow();
        assertThat(hunt.without(first).next().orElseThrow()).isNotEqualTo(first);
        NoiseHunt none = hunt;
        for (HuntTable.Trial trial : TABLE.trials()) {
            none = none.without(trial.id());
        }
        assertThat(none.next()).isEmpty();
    }

    @Test
    void noTrialTouchesAMainsEarth() {
        assertThat(TABLE.trials()).noneMatch(trial -> trial.id().contains("earth"));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        lift the earth                                   | true
        can I tape over the earth pin?                   | true
        cut off the third prong                          | true
        use a cheater plug                               | true
        ground lift adapter on the amp                   | true
        pull the ground pin out                          | true
        a two-prong adapter                              | true
        disconnect the safety ground                     | true
        Netzerde abkleben                                | true
        den Schutzleiter abklemmen                       | true
        ich ziehe die Erdung raus                        | true
        ein Stecker ohne Schutzkontakt                   | true
        das Kabel werde ich ziehen                       | false
        den Ground-Lift der DI drücken                   | false
        switch on the ground lift of the DI              | false
        touch the strings                                | false
        unplug the charger                               | false
        plug everything into one earthed outlet          | false
        """)
    void liftingAMainsEarthIsRefused(String words, boolean refused) {
        assertThat(EarthRefusal.isMeant(words)).isEqualTo(refused);
    }

    private static NoiseHunt hum() {
        return NoiseHunt.start(TABLE, HuntTable.Part.HUM, EnumSet.of(HuntTable.Part.HUM), RigFacts.ALL);
    }

    private static NoiseHunt buzz() {
        return NoiseHunt.start(TABLE, HuntTable.Part.BUZZ, EnumSet.of(HuntTable.Part.HUM, HuntTable.Part.BUZZ), RigFacts.ALL);
    }

    private static double probability(NoiseHunt hunt, String cause) {
        return hunt.ranking().stream().filter(suspect -> suspect.cause().equals(cause)).findFirst().orElseThrow().probability();
    }
}
