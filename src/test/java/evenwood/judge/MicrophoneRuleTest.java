package evenwood.judge;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.measure.Note;
import evenwood.measure.TakeReadings;
import evenwood.rig.Tap;
import evenwood.takes.ReadingsSketch;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class MicrophoneRuleTest {
    private static final double NO_NOTES_BELOW_HZ = 41;
    private static final double NO_NOISE = Double.NEGATIVE_INFINITY;

    @Test
    void aPickupGetsNoRemark() {
        assertThat(MicrophoneRule.remarks(even(-20), Tap.PICKUP, NO_NOTES_BELOW_HZ)).isEmpty();
    }

    @Test
    void aMicrophoneIsToldToCompare() {
        assertThat(keys(even(-50))).containsExactly("microphone.compare");
    }

    @Test
    void restsQuieterThanAnyRoomWereGated() {
        assertThat(keys(new ReadingsSketch().noise(-104, NO_NOISE, NO_NOISE, -104).readings())).contains("microphone.gated");
        assertThat(keys(new ReadingsSketch().noise(-62, NO_NOISE, NO_NOISE, -62).readings())).doesNotContain("microphone.gated");
    }

    @Test
    void playingThatIsAllEquallyLoudIsAskedAbout() {
        TakeReadings readings = new ReadingsSketch().dynamics(-18, -16, -15, 60).noise(-62, NO_NOISE, NO_NOISE, -62).readings();
        assertThat(keys(readings)).contains("microphone.automatic-gain");
    }

    @Test
    void soundUnderTheLowestNoteIsTheRooms() {
        // The sketch has all bands equally loud, so a violin's take has sound where a violin has no notes.
        assertThat(MicrophoneRule.remarks(even(-50), Tap.MICROPHONE, 196)).extracting(Statement::key).contains("microphone.room-bass");
    }

    @Test
    void notesThatWerePlayedDownThereAreNotTheRooms() {
        TakeReadings readings = new ReadingsSketch().noise(-62, NO_NOISE, NO_NOISE, -62)
            .notes(Collections.nCopies(3, new Note(1, 1.4, 110, 45, 0.95, false, -20, -25))).readings();
        assertThat(MicrophoneRule.remarks(readings, Tap.MICROPHONE, 196)).extracting(Statement::key).doesNotContain("microphone.room-bass");
    }

    private static List<String> keys(TakeReadings readings) {
        return MicrophoneRule.remarks(readings, Tap.MICROPHONE, NO_NOTES_BELOW_HZ).stream().map(Statement::key).toList();
    }

    private static TakeReadings even(double softDbfs) {
        return new ReadingsSketch().dynamics(softDbfs, -16, -10, 60).noise(-62, NO_NOISE, NO_NOISE, -62).readings();
    }
}
