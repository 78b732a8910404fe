package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.Fault;
import evenwood.judge.TargetWindow;
import evenwood.measure.TakeReadings;
import java.util.Optional;

/**
 * How loud it is and how loud it should be, in numbers to draw and words to read.
 *
 * @param peakDbtp    highest of the last moment; −Infinity for silence
 * @param highestDbtp highest of the take; −Infinity for silence
 * @param lufs        loudness of the last three seconds; −Infinity for silence
 * @param window      where the hardest playing should peak
 * @param onsetDbfs   where distortion begins; NaN never: −Infinity when none is known
 * @param floorDbfs   noise in the quiet parts; −Infinity when none is known
 * @param state       how it stands
 * @param verdict     the same in words
 * @param peakText    and so on: each number with its unit
 * @param aimText     the window in a sentence
 * @param peakName    what the peak is
 */
public record LevelPicture(double peakDbtp, double highestDbtp, double lufs, TargetWindow window, double onsetDbfs, double floorDbfs,
                           State state, String verdict, String peakText, String highestText, String loudnessText, String windowText,
                           String onsetText, String floorText, String aimText, String peakName) {
    public enum State { NOTHING, QUIET, GOOD, HOT, OVER }

    public static LevelPicture of(Now now, Words words) {
        TargetWindow window = TargetWindow.DEFAULT;
        double none = Double.NEGATIVE_INFINITY;
        double peak = now.readings().map(each -> each.now().peakDbtp()).orElse(none);
        double highest = now.readings().map(each -> each.truePeak().truePeakDbtp()).orElse(none);
        double lufs = now.readings().map(each -> now.isLive() ? each.loudness().shortTermLufs() : each.loudness().integratedLufs()).orElse(none);
        double onset = now.readings().map(each -> each.distortion().onsetDbfs().orElse(none)).orElse(none);
        double floor = now.readings().map(LevelPicture::floor).orElse(none);
        State state = state(now);
        return new LevelPicture(now.isLive() ? peak : highest, highest, lufs, window, onset, floor, state, words.say("level." + state.name().toLowerCase(java.util.Locale.ROOT)),
            words.level(now.isLive() ? peak : highest, "unit.dbtp"), words.level(highest, "unit.dbtp"), words.level(lufs, "unit.lufs"),
            words.say("level.window", window.lowDbtp(), window.highDbtp()), words.level(onset, "unit.dbfs"), words.level(floor, "unit.dbfs"),
            words.say("level.aim", window.lowDbtp(), window.highDbtp()), words.say(now.isLive() ? "level.mark.now" : "level.mark.highest"));
    }

    private static double floor(TakeReadings readings) {
        return readings.activity().hasQuiet() ? readings.noise().floorDbfs() : Double.NEGATIVE_INFINITY;
    }

    private static State state(Now now) {
        Optional<Assessment> assessment = now.assessment();
        if (assessment.isEmpty() || !assessment.get().readings().hasPlaying()) {
            return State.NOTHING;
        }
        if (assessment.get().verdict().has(Fault.CLIPPING) || assessment.get().verdict().has(Fault.OVERDRIVEN)) {
            return State.OVER;
        }
        return assessment.get().verdict().has(Fault.TOO_HOT) ? State.HOT : assessment.get().verdict().has(Fault.TOO_QUIET) ? State.QUIET : State.GOOD;
    }
}
