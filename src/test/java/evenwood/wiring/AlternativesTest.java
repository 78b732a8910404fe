package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.rig.CableRun;
import evenwood.rig.Gear;
import evenwood.rig.PluggedBox;
import evenwood.rig.PresetKind;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class AlternativesTest {
    private static final Gear SHOP = new Gear(Plugged.PRESETS.ids(PresetKind.BOXES).stream().map(Plugged.PRESETS::box).toList(),
        Plugged.PRESETS.ids(PresetKind.CABLES).stream().map(Plugged.PRESETS::cable).toList(), List.of());

    @Test
    void whatIsRightNeedsNoAdvice() {
        assertThat(advice("piezo-disc > instrument-cable 3 > amp-instrument", Gear.NOTHING, 82.4)).isEqualTo(WiringAdvice.NONE);
    }

    @Test
    void anActiveDiInTheBagIsTakenInsteadOfThePassiveOne() {
        WiringAdvice advice = advice("piezo-disc > instrument-cable 3 > passive-di > microphone-cable 20 > mixer-microphone",
            gear(List.of("active-di"), List.of()), 41.2);
        assertThat(shape(advice.atHand().orElseThrow())).isEqualTo("active-di mixer-microphone");
        assertThat(advice.atHand().get().worst()).isEqualTo(Fit.RIGHT);
        assertThat(advice.buyFirst()).as("nothing left to buy for").isEmpty();
    }

    @Test
    void aPiezoWithoutAFittingBoxIsToldOneThingToBuy() {
        WiringAdvice advice = advice("piezo-bridge > instrument-cable 3 > passive-di > microphone-cable 20 > mixer-microphone", Gear.NOTHING, 196);
        Alternative buy = advice.buyFirst().orElseThrow();
        assertThat(buy.toBuy()).hasSize(1);
        assertThat(buy.worst()).isEqualTo(Fit.RIGHT);
        assertThat(buy.report().joints().get(0).loadOhms()).as("megohms for the piezo").isGreaterThan(200_000);
    }

    @Test
    void aDynamicMicrophoneGoesToTheMicrophoneInputAtHand() {
        WiringAdvice advice = advice("dynamic-microphone > microphone-cable 10 > mixer-line", gear(List.of(), List.of("mixer-microphone")), 196);
        assertThat(shape(advice.atHand().orElseThrow())).isEqualTo("mixer-microphone");
        assertThat(advice.atHand().get().report().connection().main().input().phantom()).as("it needs none").isFalse();
    }

    @Test
    void aGroundLoopIsCuredByTheLiftThatIsThere() {
        WiringAdvice advice = advice("piezo-disc > instrument-cable 3 > active-di > microphone-cable 20 > mixer-microphone / instrument-cable 3 > amp-instrument @different",
            Gear.NOTHING, 82.4);
        Alternative better = advice.atHand().orElseThrow();
        assertThat(better.worst()).isEqualTo(Fit.RIGHT);
        assertThat(better.report().connection().main().boxes()).extracting(PluggedBox::groundLift).containsExactly(true);
    }

    @Test
    void anAmpAndItsCabinetKeepTheirPlacesAndGetAnotherCable() {
        WiringAdvice advice = advice("magnetic-single-coil > instrument-cable 3 > amp-head gain=20 > instrument-cable 2 > speaker-cabinet", Gear.NOTHING, 82.4);
        assertThat(advice.atHand()).isEmpty();
        Alternative buy = advice.buyFirst().orElseThrow();
        assertThat(buy.toBuy()).containsExactly("speaker cable");
        assertThat(buy.report().connection().main().links()).filteredOn(CableRun.class::isInstance).last()
            .isEqualTo(new CableRun(Plugged.PRESETS.cable("speaker-cable"), 2));
    }

    @Test
    void condenserWithoutPhantomIsToldToSwitchItOn() {
        WiringAdvice advice = advice("condenser-microphone > microphone-cable 10 > mixer-microphone", Gear.NOTHING, 196);
        assertThat(advice.atHand().orElseThrow().report().connection().main().input().phantom()).isTrue();
    }

    private static WiringAdvice advice(String chain, Gear owned, double lowestHz) {
        return Alternatives.of(ChainAnalysis.of(Plugged.in(chain, owned), lowestHz), SHOP);
    }

    private static Gear gear(List<String> boxes, List<String> inputs) {
        return new Gear(boxes.stream().map(Plugged.PRESETS::box).toList(), List.of(), inputs.stream().map(Plugged.PRESETS::input).toList());
    }

    private static String shape(Alternative alternative) {
        return alternative.report().connection().main().boxes().stream().map(plugged -> plugged.box().id() + " ").collect(Collectors.joining())
            + alternative.report().connection().main().input().input().id();
    }
}
