package evenwood.eq;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.rig.Presets;
import evenwood.rig.Setting;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SolverTest {
    private static final Solver SOLVER = new Solver(Differences.SAMPLE_RATE_HZ);

    @Test
    void boomIsTakenOutWithTheBassKnobAlone() {
        ToneDifference boomy = Differences.of(EqChain.of(EqFilter.lowShelf(120, EqFilter.BUTTERWORTH_Q, 7)), 1, 1);
        List<Turn> turns = SOLVER.solve(boomy, neutral("amp-bass-mid-treble"), ControlLaws.NOMINAL, 3).turns();
        assertThat(turns).hasSize(1);
        assertThat(turns.get(0).from().orElseThrow().control().name()).isEqualTo("Bass");
        assertThat(turns.get(0).to().orElseThrow().gain().orElseThrow()).isBetween(1.5, 2.5); // 7 dB is 2.9 marks under 5
    }

    @Test
    void aSweptMidGoesToWhereTheBumpIs() {
        ToneDifference boxy = Differences.of(EqChain.of(EqFilter.peak(420, 0.9, 6)), 1, 0.5);
        Turn turn = SOLVER.solve(boxy, neutral("channel-strip"), ControlLaws.NOMINAL, 3).turns().get(0);
        assertThat(turn.from().orElseThrow().control().name()).isEqualTo("Mid");
        assertThat(turn.to().orElseThrow().frequencyHz()).isCloseTo(420, within(40.0));
        assertThat(turn.to().orElseThrow().gainDb()).isBetween(-7.0, -5.0);
    }

    @Test
    void rumbleIsTakenOutByTheHighPass() {
        double[] missing = Differences.RESPONSE.db(EqFilter.highPass(80, 3));
        ToneDifference rumbling = Differences.of(band -> -missing[Differences.BANDS.indexOf(band)], 1, 1);
        Turn turn = SOLVER.solve(rumbling, neutral("channel-strip"), ControlLaws.NOMINAL, 1).turns().get(0);
        assertThat(turn.to().orElseThrow().say()).isEqualTo("on");
        assertThat(turn.to().orElseThrow().control().name()).isEqualTo("HPF");
    }

    @Test
    void aControlAlreadyTurnedIsTurnedBackInsteadOfAnotherAgainstIt() {
        List<Setting> settings = neutral("graphic-seven-band").stream()
            .map(setting -> setting.control().name().equals("3.15 kHz") ? setting.withGain(9) : setting).toList();
        ToneDifference harsh = Differences.of(EqChain.of(EqFilter.peak(3150, 1.41, 9)), 1, 1);
        Solution found = SOLVER.solve(harsh, settings, ControlLaws.NOMINAL, 3);
        assertThat(found.turns()).hasSize(1);
        assertThat(found.turns().get(0).to().orElseThrow().gainDb()).isBetween(0.0, 1.0);
    }

    /** Too much at 3 kHz and a little too little above it, not surely heard: more treble would lift what is too much as well. */
    @ParameterizedTest(name = "known to {0} dB")
    @ValueSource(doubles = {4, 6})
    void harshnessIsNotAnsweredByMoreTreble(double uncertaintyDb) {
        ToneDifference harsh = Differences.of(EqChain.of(EqFilter.peak(3000, 1.2, 9)).then(EqFilter.highShelf(5500, EqFilter.BUTTERWORTH_Q, -2)), uncertaintyDb, 1);
        Solution found = SOLVER.solve(harsh, neutral("amp-bass-mid-treble"), ControlLaws.NOMINAL, 3);
        assertThat(found.turns()).noneSatisfy(turn -> {
            assertThat(turn.from().orElseThrow().control().name()).isEqualTo("Treble");
            assertThat(turn.to().orElseThrow().gainDb()).isGreaterThan(turn.from().orElseThrow().gainDb());
        });
    }

    @Test
    void whatTheRigCannotReachIsSaid() {
        ToneDifference whistling = Differences.of(EqChain.of(EqFilter.peak(1000, 4, 12)), 0.5, 1);
        Solution found = SOLVER.solve(whistling, neutral("amp-two-band"), ControlLaws.NOMINAL, 3);
        assertThat(found.unreached()).extracting(ToneDifference.Band::band).contains(ThirdOctave.containing(1000));
        assertThat(SOLVER.solve(whistling, 3).unreached()).isEmpty();
    }

    @Test
    void theMostUsefulTurnComesFirst() {
        ToneDifference heard = Differences.of(EqChain.of(EqFilter.peak(300, 2, 5), EqFilter.peak(3000, 1, 10)), 0.5, 0.5);
        List<Turn> turns = SOLVER.solve(heard, 3).turns();
        assertThat(turns.get(0).stage().frequencyHz()).isCloseTo(3000, within(300.0));
        assertThat(turns).isSortedAccordingTo((a, b) -> Double.compare(b.figures().benefitDb(), a.figures().benefitDb()));
    }

    @Test
    void aCutIsPreferredWhereABoostWouldDoAsWell() {
        // Half the bands 6 dB over the other half: a high shelf down or up, or a low shelf.
        ToneDifference bright = Differences.of(EqChain.of(EqFilter.highShelf(1000, EqFilter.BUTTERWORTH_Q, 6)), 0.5, 0.5);
        assertThat(SOLVER.solve(bright, 3).turns()).singleElement().satisfies(turn -> assertThat(turn.stage().gainDb()).isNegative());
        ToneDifference dark = Differences.of(EqChain.of(EqFilter.highShelf(1000, EqFilter.BUTTERWORTH_Q, -6)), 0.5, 0.5);
        assertThat(SOLVER.solve(dark, 3).turns()).singleElement().satisfies(turn -> {
            assertThat(turn.stage().kind()).isEqualTo(FilterKind.LOW_SHELF);
            assertThat(turn.stage().gainDb()).isNegative();
        });
    }

    @Test
    void aBandNobodyKnowsAnythingAboutMovesNothing() {
        ToneDifference heard = new ToneDifference(Differences.BANDS.stream().map(band -> new ToneDifference.Band(band,
            band.centreHz() < 300 ? 15 : 0, band.centreHz() < 300 ? Double.POSITIVE_INFINITY : 1, 1, 1)).toList());
        assertThat(SOLVER.solve(heard, 3).turns()).isEmpty();
        assertThat(SOLVER.solve(ToneDifference.NONE, 3).turns()).isEmpty();
    }

    private static List<Setting> neutral(String set) {
        return new Presets(Path.of("none")).controls(set).controls().stream().map(Setting::neutral).toList();
    }
}
