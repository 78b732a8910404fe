package evenwood.ui.model;

import evenwood.eq.BandResponse;
import evenwood.eq.ControlLaw;
import evenwood.eq.LearnedLaw;
import evenwood.eq.NominalLaw;
import evenwood.measure.ThirdOctave;
import evenwood.report.LearnText;
import evenwood.rig.LearnedControl;
import evenwood.ui.model.TonePicture.Point;
import java.util.ArrayList;
import java.util.List;

/**
 * A learned control beside what its marking says, both against the position where it does least.
 *
 * @param curves one for each other position
 * @param topDb  upper end of the axis; its lower end is as far under 0 dB
 * @param unit   what the axis counts, to stand behind each of its numbers
 * @param words  what was learned, in sentences
 */
public record LearnedPicture(List<Curve> curves, double topDb, String unit, List<String> words) {
    private static final double LEAST_TOP_DB = 12;
    private static final double MOST_TOP_DB = 36;
    private static final double TICK_DB = 6;
    private static final double ROOM_DB = 1;
    private static final double DEVIATIONS_95 = 1.96;
    private static final BandResponse RESPONSE = new BandResponse(ThirdOctave.FROM_50_HZ_TO_16_KHZ, 48_000);

    /** @param position in words  @param learned as heard, with how sure  @param nominal as marked */
    public record Curve(String position, List<Point> learned, List<Point> nominal) { }

    static LearnedPicture of(LearnedControl learned, double lowestHz, Words words) {
        LearnedControl.Curve reference = LearnText.reference(learned);
        List<Curve> curves = new ArrayList<>();
        for (LearnedControl.Curve curve : learned.curves()) {
            if (curve != reference) {
                curves.add(new Curve(words.say("learn.step", Positions.say(curve.at().say(), words)), points(new LearnedLaw(learned), reference, curve, true),
                    points(new NominalLaw(), reference, curve, false)));
            }
        }
        double most = curves.stream().flatMap(curve -> curve.nominal.stream()).mapToDouble(point -> Math.abs(point.db())).max().orElse(0);
        most = Math.max(most, curves.stream().flatMap(curve -> curve.learned.stream()).mapToDouble(point -> Math.abs(point.db())).max().orElse(0));
        double top = Math.max(LEAST_TOP_DB, Math.min(MOST_TOP_DB, TICK_DB * Math.ceil((most + ROOM_DB) / TICK_DB)));
        return new LearnedPicture(List.copyOf(curves), top, words.say("tone.axis", words.say("unit.db")), words.learned(learned, lowestHz));
    }

    private static List<Point> points(ControlLaw law, LearnedControl.Curve reference, LearnedControl.Curve curve, boolean howSure) {
        double[] there = law.bandsDb(curve.at(), RESPONSE);
        double[] here = law.bandsDb(reference.at(), RESPONSE);
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < there.length; i++) {
            double hz = RESPONSE.bands().get(i).centreHz();
            points.add(new Point(hz, there[i] - here[i], howSure ? DEVIATIONS_95 * Math.hypot(curve.deviationDb(hz), reference.deviationDb(hz)) : 0));
        }
        return points;
    }
}
