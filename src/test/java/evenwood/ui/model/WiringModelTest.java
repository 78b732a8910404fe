package evenwood.ui.model;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.rig.CableRun;
import evenwood.rig.PluggedBox;
import evenwood.rig.Presets;
import evenwood.wiring.Fit;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class WiringModelTest {
    @TempDir
    Path folder;
    private final Words words = Words.in(Locale.ENGLISH);
    private RigModel rig;
    private WiringModel wiring;

    @BeforeEach
    void fresh() {
        rig = new RigModel(new Presets(folder), new Choices(folder.resolve("window.properties")));
        wiring = rig.wiring();
    }

    @Test
    void beforeAnythingWasSaidThereIsAChainButItIsNotTakenForTheTruth() {
        assertThat(wiring.said()).isEmpty();
        assertThat(wiring.connection().main().input().input().id()).isEqualTo("interface-instrument");
        assertThat(rig.rig().orElseThrow().connection()).isEmpty();
    }

    @Test
    void whatWasSaidIsPartOfTheRigAndOutlivesTheWindow() {
        wiring.take(Scenario.STAGE);

        RigModel later = new RigModel(new Presets(folder), new Choices(folder.resolve("window.properties")));

        assertThat(later.rig().orElseThrow().connection()).isEqualTo(Optional.of(wiring.connection()));
        assertThat(later.chosen(RigModel.Part.BOX)).isEqualTo("active-di");
        assertThat(later.chosen(RigModel.Part.INPUT)).isEqualTo("mixer-microphone");
    }

    @ParameterizedTest
    @EnumSource(Scenario.class)
    void everyReadyWayHasNoDanger(Scenario scenario) {
        wiring.take(scenario);

        ChainPicture picture = ChainPicture.of(wiring.connection(), 98, words);

        assertThat(picture.worst()).isNotEqualTo(Fit.DANGER);
        assertThat(picture.ways().get(0).things()).hasSize(picture.ways().get(0).joints().size() + 1);
    }

    @Test
    void aBoxThatIsMovedTakesAlongTheCableBehindIt() {
        wiring.take(Scenario.STAGE);
        int added = wiring.add("acoustic-preamp");
        wiring.cable(added + 1, wiring.cable("low-capacitance-cable", 1));

        int now = wiring.move(added, -1);

        assertThat(now).isZero();
        assertThat(wiring.boxes().stream().map(each -> each.box().id())).containsExactly("acoustic-preamp", "active-di");
        assertThat(wiring.cableOutOf(1).map(CableRun::metres)).contains(1.0);
        assertThat(wiring.cableOutOf(2).map(CableRun::metres)).contains(15.0);
        assertThat(wiring.cableOutOf(0).map(CableRun::metres)).contains(3.0);
    }

    @Test
    void aBoxAtTheEndStaysWhereItIs() {
        wiring.take(Scenario.STAGE);

        assertThat(wiring.move(0, 1)).isZero();
        assertThat(wiring.move(0, -1)).isZero();
        assertThat(wiring.boxes()).hasSize(1);
    }

    @Test
    void takingOutTheBoxWithTheThruSocketTakesTheSecondWayToo() {
        wiring.take(Scenario.AMP_AND_MIXER);
        assertThat(wiring.connection().thru()).isPresent();

        wiring.remove(0);

        assertThat(wiring.connection().thru()).isEmpty();
        assertThat(wiring.boxes()).isEmpty();
    }

    @Test
    void anotherPickupOnTheRigPageIsPluggedIntoTheSameChain() {
        wiring.take(Scenario.STAGE);

        rig.choose(RigModel.Part.PICKUP, "magnetic-single-coil");

        assertThat(wiring.said().orElseThrow().pickup().id()).isEqualTo("magnetic-single-coil");
        assertThat(wiring.boxes()).hasSize(1);
    }

    @Test
    void anotherBoxOnTheRigPageMakesTheChainAGuessAgain() {
        wiring.take(Scenario.STAGE);

        rig.choose(RigModel.Part.BOX, "passive-di");

        assertThat(wiring.said()).isEmpty();
        assertThat(wiring.boxes().stream().map(each -> each.box().id())).containsExactly("passive-di");
    }

    @Test
    void aBarePiezoOnAPassiveDiIsWrongInWordsAndGermanNamesTheBoxInGerman() {
        wiring.take(Scenario.STAGE);
        wiring.set(0, PluggedBox.of(wiring.presets().box("passive-di")));
        Words german = Words.in(Locale.GERMAN);

        ChainPicture picture = ChainPicture.of(wiring.connection(), 98, german);

        assertThat(picture.worst()).isEqualTo(Fit.WRONG);
        assertThat(picture.said(picture.firstToRead(), german)).anySatisfy(say -> assertThat(say.evidence()).contains("passive DI"));
        assertThat(picture.ways().get(0).things().get(2).name()).isEqualTo("Mikrofoneingang des Mischpults");
        assertThat(picture.ways().get(0).joints().get(0).cable()).isEqualTo("3 m Instrumentenkabel");
    }

    @Test
    void theQuestionsEndInTheChainThatWasAnswered() {
        AskModel ask = new AskModel(rig);
        for (String answer : List.of("piezo-disc", "instrument-cable", "4,5", "passive-di", "none", "no", "microphone-cable", "20", "mixer-microphone", "", "no", "no", "")) {
            assertThat(ask.answer(answer)).as(answer + " to " + ask.question().map(each -> each.key()).orElse("nothing")).isTrue();
        }
        assertThat(ask.question()).isEmpty();

        wiring.takeRig(ask.rig());

        assertThat(wiring.said().orElseThrow().pickup().id()).isEqualTo("piezo-disc");
        assertThat(wiring.cableOutOf(0).map(CableRun::metres)).contains(4.5);
        assertThat(wiring.boxes().stream().map(each -> each.box().id())).containsExactly("passive-di");
    }

    @Test
    void aWrongAnswerIsNotTakenAndBackAsksAgain() {
        AskModel ask = new AskModel(rig);
        String first = ask.question().orElseThrow().key();

        assertThat(ask.answer("no such pickup")).isFalse();
        assertThat(ask.answer("piezo-disc")).isTrue();
        ask.back();

        assertThat(ask.question().orElseThrow().key()).isEqualTo(first);
        assertThat(ask.canGoBack()).isFalse();
    }

    @Test
    void theCurveOfTheChainIsZeroAtOneKilohertz() {
        wiring.take(Scenario.HOME);

        ResponsePicture curve = ResponsePicture.of(ChainPicture.of(wiring.connection(), 98, words).report(), Optional.empty(), words);

        assertThat(curve.curves().predicted()).filteredOn(point -> Math.abs(point.hz() - 1000) < 20).allSatisfy(point -> assertThat(point.db()).isBetween(-0.2, 0.2));
        assertThat(curve.words()).hasSize(1);
    }
}
