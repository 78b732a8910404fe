package evenwood.coach;

import evenwood.judge.Judge;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.judge.Verdict;
import evenwood.measure.TakeReadings;
import java.util.Optional;

/** Judges a take and answers its findings with moves. Same readings, same answer. */
public final class Coach {
    private final TargetWindow window;
    private final Judge judge;

    public Coach(TargetWindow window) {
        this.window = window;
        judge = new Judge(window);
    }

    /** Without a wanted tone. */
    public Assessment assess(TakeReadings readings) {
        return assess(readings, Optional.empty());
    }

    public Assessment assess(TakeReadings readings, Optional<ToneComparison> tone) {
        Verdict verdict = judge.judge(readings, tone);
        return new Assessment(readings, verdict, GainCoach.moves(readings, verdict, window));
    }
}
