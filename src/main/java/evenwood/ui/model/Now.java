package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.live.LiveState;
import evenwood.measure.TakeReadings;
import java.util.Optional;

/**
 * All the window shows of the current take at one moment; immutable.
 *
 * @param number     grows whenever anything of it changed
 * @param choice     what is heard; empty before anything was chosen
 * @param readings   what was measured; empty before anything was heard
 * @param assessment what the coach says of it; a second or so older than the readings while live
 * @param state      how a live take stands; empty for a recording
 * @param progress   part done of a check under way, 0 to 1; negative when none is
 * @param problem    what went wrong
 */
public record Now(long number, Optional<SoundChoice> choice, Optional<TakeReadings> readings, Optional<Assessment> assessment,
                  Optional<LiveState> state, double progress, Problem problem) {
    public static final Now NOTHING = new Now(0, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), -1,
        Problem.NONE);

    /** Nothing of it was heard yet. @param progress as above */
    static Now begun(SoundChoice choice, double progress) {
        return new Now(0, Optional.of(choice), Optional.empty(), Optional.empty(), Optional.empty(), progress, Problem.NONE);
    }

    /** The same, with what the coach says of it. */
    Now judged(Assessment by) {
        return new Now(number, choice, readings, Optional.of(by), state, -1, problem);
    }

    /** What was measured stays; it goes on no longer. */
    Now failed(Problem why) {
        return new Now(number, choice, readings, assessment, Optional.empty(), -1, why);
    }

    /** The same, as number so and so. */
    Now numbered(long newNumber) {
        return new Now(newNumber, choice, readings, assessment, state, progress, problem);
    }

    public boolean isChecking() {
        return progress >= 0;
    }

    /** Whether it is heard just now, and not only was. */
    public boolean isListening() {
        return state.filter(each -> each.phase() != LiveState.Phase.STOPPED).isPresent();
    }

    public boolean isLive() {
        return state.isPresent();
    }
}
