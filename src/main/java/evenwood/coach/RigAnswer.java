package evenwood.coach;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaw;
import evenwood.eq.ControlLearning;
import evenwood.eq.RigInUse;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.Setting;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How a control of the rig answered when it was turned between two takes.
 *
 * @param control     which
 * @param from        where it stood
 * @param to          where it was turned to
 * @param meantDb     what its largest change should have been where both takes have sound
 * @param answeredDb  what it was
 * @param deviationDb standard error of that
 * @param heard       the change, what other turned controls should have done taken off
 */
public record RigAnswer(Control control, Setting from, Setting to, double meantDb, double answeredDb, double deviationDb,
                        LearnedControl.Answer heard) {
    /** Other controls turned at the same time do what is known of them within a quarter; our choice. */
    private static final double OTHERS_DEVIATION = 0.25;
    private static final double DEVIATIONS_95 = 1.96;
    private static final double LEAST_MEANT_DB = 0.5;
    private static final double SAMPLE_RATE_HZ = 192_000;

    /** One for each move that names a control of the rig with its positions, and that the takes can tell something about. */
    public static List<RigAnswer> of(List<StoredMove> moves, RigInUse rig, TakeReadings before, TakeReadings now) {
        List<StoredMove.Turned> turned = moves.stream().flatMap(move -> move.turned(rig.rig()).stream()).toList();
        List<RigAnswer> answers = new ArrayList<>();
        for (StoredMove.Turned each : turned) {
            ControlLearning.answer(new ControlLearning.Played(each.from(), before), new ControlLearning.Played(each.to(), now), 1)
                .flatMap(heard -> answer(heard, turned, rig)).ifPresent(answers::add);
        }
        return answers;
    }

    private static Optional<RigAnswer> answer(LearnedControl.Answer heard, List<StoredMove.Turned> turned, RigInUse rig) {
        BandResponse response = new BandResponse(heard.bands().stream().map(band -> ThirdOctave.containing(band.centreHz())).toList(), SAMPLE_RATE_HZ);
        List<LearnedControl.Band> bands = new ArrayList<>(heard.bands());
        for (StoredMove.Turned other : turned) {
            if (!other.from().control().equals(heard.from().control())) {
                double[] effect = effect(other.from(), other.to(), rig, response);
                for (int i = 0; i < effect.length; i++) {
                    LearnedControl.Band band = bands.get(i);
                    bands.set(i, new LearnedControl.Band(band.centreHz(), band.changeDb() - effect[i], Math.hypot(band.deviationDb(), OTHERS_DEVIATION * effect[i])));
                }
            }
        }
        double[] meant = effect(heard.from(), heard.to(), rig, response);
        return fitted(new LearnedControl.Answer(heard.from(), heard.to(), bands), meant);
    }

    private static double[] effect(Setting from, Setting to, RigInUse rig, BandResponse response) {
        ControlLaw law = rig.laws().of(from.control());
        double[] effect = law.bandsDb(to, response);
        double[] before = law.bandsDb(from, response);
        for (int i = 0; i < effect.length; i++) {
            effect[i] -= before[i];
        }
        return effect;
    }

    /** How much of the meant change there is, by weighted least squares with the level free (a gain is all level). */
    private static Optional<RigAnswer> fitted(LearnedControl.Answer heard, double[] meant) {
        boolean tone = heard.from().control().shapesTone();
        double weights = 0;
        double meanMeant = 0;
        double meanHeard = 0;
        for (int i = 0; i < meant.length && tone; i++) {
            double weight = weight(heard.bands().get(i));
            weights += weight;
            meanMeant += weight * meant[i];
            meanHeard += weight * heard.bands().get(i).changeDb();
        }
        meanMeant /= Math.max(1e-12, weights);
        meanHeard /= Math.max(1e-12, weights);
        double product = 0;
        double square = 0;
        double largest = 0;
        for (int i = 0; i < meant.length; i++) {
            double weight = weight(heard.bands().get(i));
            product += weight * (meant[i] - meanMeant) * (heard.bands().get(i).changeDb() - meanHeard);
            square += weight * (meant[i] - meanMeant) * (meant[i] - meanMeant);
            largest = Math.abs(meant[i]) > Math.abs(largest) ? meant[i] : largest;
        }
        if (Math.abs(largest) < LEAST_MEANT_DB || square < 1e-9) {
            return Optional.empty();
        }
        return Optional.of(new RigAnswer(heard.from().control(), heard.from(), heard.to(), largest, largest * product / square,
            Math.abs(largest) / Math.sqrt(square), heard));
    }

    /** 95 % half-width of what was answered. */
    public double halfWidthDb() {
        return DEVIATIONS_95 * deviationDb;
    }

    private static double weight(LearnedControl.Band band) {
        return 1 / Math.max(0.04, band.deviationDb() * band.deviationDb());
    }
}
