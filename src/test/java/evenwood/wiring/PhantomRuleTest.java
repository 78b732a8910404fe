package evenwood.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.rig.Connection;
import evenwood.rig.Input;
import evenwood.rig.Line;
import evenwood.rig.PluggedInput;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PhantomRuleTest {
    private static final String CHAIN = "piezo-disc > instrument-cable 3 > active-di-phantom > microphone-cable 20 > mixer-microphone phantom";

    /** 6 mA from 48 V leave 27.6 V, from 24 V 20.4 V, from 12 V 10 V (IEC 61938 resistors); this DI wants 22 V. */
    @ParameterizedTest
    @CsvSource({"48, false", "24, true", "12, true"})
    void aSupplyTooWeakForItsBoxIsTold(double volts, boolean weak) {
        Connection connection = Plugged.in(CHAIN);
        Input input = connection.main().input().input();
        Input other = new Input(input.id(), input.name(), input.device(), input.accepts(), input.inputOhms(), input.inputFarads(), input.balanced(),
            input.gain(), input.maximumDbu(), input.fullScaleDbu(), input.digital(), input.einDbu(), input.einSourceOhms(), input.outputNoiseDbu(),
            volts, input.earthed(), input.source());
        Line line = new Line(connection.main().links(), new PluggedInput(other, connection.main().input().gainDb(), true));
        ChainReport report = ChainAnalysis.of(new Connection(connection.pickup(), line, connection.thru(), connection.sameOutlet(), connection.owned()), 82.4);
        assertThat(WiringRules.verdicts(report).stream().anyMatch(verdict -> verdict.fault() == WiringFault.PHANTOM_WEAK)).isEqualTo(weak);
    }

    @Test
    void phantomPowerGoesThroughAPadAndStopsAtAnAmplifier() {
        assertThat(WiringRules.verdicts(ChainAnalysis.of(Plugged.in("ribbon-microphone > microphone-cable 3 > inline-pad > microphone-cable 3 > mixer-microphone phantom"), 196)))
            .extracting(WiringVerdict::fault).contains(WiringFault.PHANTOM_ON_RIBBON);
        assertThat(WiringRules.verdicts(ChainAnalysis.of(Plugged.in("ribbon-microphone > microphone-cable 3 > mixer-channel gain=50 > microphone-cable 3 > mixer-microphone phantom"), 196)))
            .extracting(WiringVerdict::fault).doesNotContain(WiringFault.PHANTOM_ON_RIBBON);
    }
}
