package evenwood.coach.hunt;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.rig.HuntTable;
import evenwood.rig.HuntTable.Need;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RigFactsTest {
    private static final Presets PRESETS = new Presets(Path.of("nowhere"));

    @Test
    void aDiOnPhantomPowerBeforeAMixerCanBeLiftedAndHasNoAdapterAndNoComputer() {
        assertThat(facts("stage")).contains(Need.GROUND_LIFT, Need.SEVERAL_EARTHS, Need.STRINGS, Need.SIGNAL_INPUT, Need.PREAMP)
            .doesNotContain(Need.MAINS_BOX, Need.COMPUTER, Need.OWN_BATTERY, Need.SOURCE_VOLUME);
    }

    @Test
    void aPreampInTheInstrumentIntoAnInterfaceHasAVolumeAndAComputer() {
        assertThat(facts("studio")).contains(Need.COMPUTER, Need.OWN_BATTERY, Need.SOURCE_VOLUME, Need.PREAMP, Need.EARLIER_GAIN)
            .doesNotContain(Need.GROUND_LIFT, Need.MAINS_BOX);
    }

    @Test
    void anAmpAloneMeetsTheEarthOnce() {
        assertThat(facts("home")).doesNotContain(Need.SEVERAL_EARTHS, Need.SEVERAL_OUTLETS, Need.GROUND_LIFT, Need.COMPUTER);
        assertThat(facts("line-out")).contains(Need.SEVERAL_EARTHS, Need.SEVERAL_OUTLETS);
    }

    /** A valve amp must not lose its loudspeaker while it plays. */
    @Test
    void thePlugOfALoudspeakerIsNeverPulled() {
        HuntProgress progress = HuntProgress.start(PRESETS.hunt("noise"), facts("head-and-cabinet"), NoisePartsTest.parts(-50, -60, -90, -110), java.util.Optional.empty());
        assertThat(progress.hunt().impossible()).contains("plug-out-at-input");
    }

    @Test
    void withoutAWiringPartEverythingMayBeThere() {
        assertThat(RigFacts.ALL).isEqualTo(EnumSet.allOf(Need.class));
    }

    /** What the table asks for exists in some rig, or a trial could never be offered. */
    @Test
    void everyNeedOfTheTableIsKnown() {
        HuntTable table = PRESETS.hunt("noise");
        assertThat(table.trials()).allSatisfy(trial -> assertThat(RigFacts.ALL).containsAll(trial.needs()));
        assertThat(table.causes()).hasSameSizeAs(evenwood.takes.NoisyRig.CAUSES);
    }

    private static Set<Need> facts(String rig) {
        return RigFacts.of(Rig.read(Path.of("src/test/resources/rigs", rig + ".yaml"), PRESETS));
    }
}
