package evenwood.coach;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.eq.Differences;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.RigInUse;
import evenwood.judge.Fault;
import evenwood.judge.Finding;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.judge.ToneSpread;
import evenwood.measure.TakeReadings;
import evenwood.rig.ControlSet;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.rig.Tap;
import evenwood.takes.ReadingsSketch;
import java.nio.file.Path;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The sketch has all bands equally loud, so a violin's take has sound where a violin has no notes: before a microphone that is the room. */
class RoomBassTest {
    private static final Presets PRESETS = new Presets(Path.of("none"));
    private static final EqChain BOOM = EqChain.of(EqFilter.peak(245, 1, 12));
    private static final EqChain BOOM_AND_HARSH = BOOM.then(EqFilter.peak(3300, 0.9, 12));

    @Test
    void whatBoomsIsTheRoomsAndTheAmpIsPutElsewhere() {
        Assessment assessment = assessed(Tap.MICROPHONE, "violin", BOOM, ToneComparison.Against.INSTRUMENT);
        assertThat(finding(assessment, Fault.BOOMY).evidence().key()).isEqualTo("boomy.room");
        assertThat(assessment.moves()).singleElement().satisfies(move -> assertThat(move.control().plainName().key()).isEqualTo("control.placement"));
    }

    @Test
    void whatElseIsWrongIsTurnedButNoBass() {
        Assessment assessment = assessed(Tap.MICROPHONE, "violin", BOOM_AND_HARSH, ToneComparison.Against.INSTRUMENT);
        assertThat(assessment.moves().stream().filter(move -> move.kind() != Move.Kind.WIRING)).isNotEmpty()
            .noneSatisfy(move -> assertThat(move.control().ownName()).contains("Bass"));
    }

    @Test
    void atALineOutTheSameIsTheInstruments() {
        Assessment assessment = assessed(Tap.AMP_LINE_OUT, "violin", BOOM, ToneComparison.Against.INSTRUMENT);
        assertThat(finding(assessment, Fault.BOOMY).evidence().key()).isEqualTo("boomy.instrument");
        assertThat(assessment.moves()).extracting(Move::kind).isNotEmpty().doesNotContain(Move.Kind.WIRING);
    }

    @Test
    void anInstrumentWithNotesDownThereIsNotExcused() {
        assertThat(finding(assessed(Tap.MICROPHONE, "double-bass", EqChain.of(EqFilter.peak(125, 1, 12)), ToneComparison.Against.INSTRUMENT), Fault.BOOMY)
            .evidence().key()).isEqualTo("boomy.instrument");
    }

    @Test
    void besideAnotherTakeTheRoomIsInBoth() {
        Assessment assessment = assessed(Tap.MICROPHONE, "violin", BOOM, ToneComparison.Against.TAKE);
        assertThat(finding(assessment, Fault.BOOMY).evidence().key()).isEqualTo("boomy.take");
        assertThat(assessment.moves()).extracting(Move::kind).doesNotContain(Move.Kind.WIRING);
    }

    private static Finding finding(Assessment assessment, Fault fault) {
        return assessment.verdict().findings().stream().filter(finding -> finding.fault() == fault).findFirst().orElseThrow();
    }

    private static Assessment assessed(Tap tap, String instrument, EqChain eq, ToneComparison.Against against) {
        ControlSet set = PRESETS.controls("amp-bass-mid-treble");
        Rig rig = new Rig("test", PRESETS.instrument(instrument), tap, set, set.controls().stream().map(Setting::neutral).toList());
        ToneComparison tone = new ToneComparison(against, instrument, rig.instrument().lowestHz(), ToneSpread.OF_TAKES, Map.of(), Differences.of(eq, 1.5, 1));
        TakeReadings readings = new ReadingsSketch().readings();
        return new Coach(TargetWindow.DEFAULT).assess(readings, Optional.of(tone), Optional.of(RigInUse.nominal(rig)), PeakForecast.fromSpectrum(readings));
    }
}
