package evenwood.coach;

import evenwood.judge.Judge;
import evenwood.judge.TargetWindow;
import evenwood.judge.Verdict;
import evenwood.measure.TakeReadings;

/** Judges a take and answers its findings with moves. Same readings, same answer. */
public final class Coach {
    private final TargetWindow window;
    private final Judge judge;

    public Coach(TargetWindow window) {
        this.window = window;
        judge = new Judge(window);
    }

    public Assessment assess(TakeReadings readings) {
        Verdict verdict = judge.judge(readings);
        return new Assessment(readings, verdict, GainCoach.moves(readings, verdict, window));
    }
}
