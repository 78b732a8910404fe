package evenwood.eq;

import evenwood.measure.NotewiseDifference;
import evenwood.measure.SweepReading;
import evenwood.measure.TakeReadings;
import evenwood.measure.ToneDifference;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Learns what a control really does: from takes with it at two or more positions, exactly from sweeps, or from how the rig
 * answered when it was turned.
 *
 * <p>Source: takes are compared note by note ({@link NotewiseDifference}), so that it need not be the same song.
 */
public final class ControlLearning {
    /** Of one player's usual loudness from take to take (AfterEvaluation, docs/accuracy.md). */
    private static final double PLAYING_DEVIATION_DB = 2.2;
    private static final double BEYOND_RECORDING_DB = 3;
    private static final int MOST_ANSWERS = 40;

    /** @param at where the control stood  @param take what was heard there */
    public record Played(Setting at, TakeReadings take) { }

    /** @param at where the control stood  @param sweep what was heard there */
    public record Swept(Setting at, SweepReading sweep) { }

    private ControlLearning() { }

    /** Empty when the takes share too little to tell. */
    public static Optional<LearnedControl> ofTakes(Control control, List<Played> takes) {
        // Every take is in several pairs; each pair counts for so much less that a take counts once.
        double repeated = Math.sqrt(takes.size() / 2.0);
        List<LearnedControl.Answer> answers = new ArrayList<>();
        for (int later = 1; later < takes.size(); later++) {
            for (int earlier = 0; earlier < later; earlier++) {
                if (!takes.get(earlier).at.equals(takes.get(later).at)) {
                    answer(takes.get(earlier), takes.get(later), repeated).ifPresent(answers::add);
                }
            }
        }
        return ofAnswers(control, answers);
    }

    /** From what is known, and how the rig has answered since. What a sweep told is not touched. */
    public static Optional<LearnedControl> further(Control control, Optional<LearnedControl> known, LearnedControl.Answer answer) {
        if (known.isPresent() && known.get().how() == LearnedControl.How.SWEEP) {
            return known;
        }
        List<LearnedControl.Answer> answers = new ArrayList<>(known.map(LearnedControl::answers).orElse(List.of()));
        if (answers.contains(answer)) {
            return known;
        }
        answers.add(answer);
        return ofAnswers(control, answers.subList(Math.max(0, answers.size() - MOST_ANSWERS), answers.size()));
    }

    private static Optional<LearnedControl> ofAnswers(Control control, List<LearnedControl.Answer> answers) {
        if (answers.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(control.shapesTone() ? new ControlFit(control, answers).learned() : new LevelFit(control, answers).learned());
    }

    /** What turning it did; empty when the two takes share too little to tell. */
    public static Optional<LearnedControl.Answer> answer(Played before, Played now, double deviationTimes) {
        List<LearnedControl.Band> bands = new ArrayList<>();
        if (before.at.control().shapesTone()) {
            for (ToneDifference.Band band : NotewiseDifference.between(now.take.noteSpectra(), before.take.noteSpectra()).bands()) {
                bands.add(new LearnedControl.Band(band.centreHz(), band.differenceDb(), deviationTimes * band.standardErrorDb()));
            }
        } else if (before.take.hasPlaying() && now.take.hasPlaying()) {
            bands.add(new LearnedControl.Band(1000, now.take.playingDbfs() - before.take.playingDbfs(), deviationTimes * PLAYING_DEVIATION_DB));
        }
        boolean enough = bands.size() >= (before.at.control().shapesTone() ? 3 : 1);
        return enough ? Optional.of(new LearnedControl.Answer(before.at, now.at, bands)) : Optional.empty();
    }

    public static LearnedControl ofSweeps(Control control, List<Swept> sweeps) {
        return new LearnedControl(control.name(), LearnedControl.How.SWEEP, sweeps.stream().map(ControlLearning::curve).toList(), List.of());
    }

    /** A recording of a low sample rate ends below 20 kHz; from there on little is known. */
    private static LearnedControl.Curve curve(Swept swept) {
        List<Double> levels = new ArrayList<>();
        List<Double> deviations = new ArrayList<>();
        List<SweepReading.Point> points = swept.sweep.points();
        for (int i = 0; i < LearnedControl.FREQUENCIES_HZ.size(); i++) {
            SweepReading.Point point = points.get(Math.min(i, points.size() - 1));
            levels.add(point.levelDb());
            deviations.add(Math.min(99, i < points.size() ? point.deviationDb() : BEYOND_RECORDING_DB));
        }
        return new LearnedControl.Curve(swept.at, levels, deviations, swept.sweep.overloadHeardDbfs());
    }
}
