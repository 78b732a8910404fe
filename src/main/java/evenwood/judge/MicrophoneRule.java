package evenwood.judge;

import evenwood.measure.TakeReadings;
import evenwood.rig.Tap;
import java.util.ArrayList;
import java.util.List;

/**
 * What a microphone before the speaker adds or takes away, as far as a take shows it, and what to do instead of trusting it.
 *
 * <p>How: a room is never silent, so rests far under any room's level were gated; a microphone's level that does not follow
 * soft and hard playing is ridden by automatic gain; of the room's bass see {@link RoomBass}. Source: our choice of limits; −90 dBFS is some 40 dB under the noise
 * of a quiet room on a microphone set so that playing peaks near full scale.
 * <p>Limits: even playing looks like automatic gain, so that is said as a question.
 */
public final class MicrophoneRule {
    private static final double GATED_DBFS = -90;
    private static final double ENOUGH_QUIET_SECONDS = 1;
    private static final double EVEN_DB = 5;
    private static final int ENOUGH_NOTES = 12;

    private MicrophoneRule() { }

    /** Nothing at other taps. */
    public static List<Statement> remarks(TakeReadings readings, Tap tap, double lowestNoteHz) {
        if (!tap.hearsTheRoom() || !readings.hasPlaying()) {
            return List.of();
        }
        List<Statement> remarks = new ArrayList<>();
        remarks.add(Statement.of("microphone.compare"));
        if (readings.activity().quietSeconds() >= ENOUGH_QUIET_SECONDS && readings.noise().floorDbfs() < GATED_DBFS) {
            remarks.add(Statement.of("microphone.gated"));
        }
        if (readings.dynamics().noteCount() >= ENOUGH_NOTES && readings.dynamics().rangeDb() < EVEN_DB) {
            remarks.add(Statement.of("microphone.automatic-gain", readings.dynamics().rangeDb()));
        }
        RoomBass.of(readings, tap, lowestNoteHz).ifPresent(room -> remarks.add(Statement.of("microphone.room-bass", room.belowHz(), room.underWholeDb())));
        return remarks;
    }
}
