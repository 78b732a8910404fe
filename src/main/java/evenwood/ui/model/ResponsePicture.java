package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.judge.ToneComparison;
import evenwood.measure.ToneDifference;
import evenwood.ui.model.TonePicture.Point;
import evenwood.ui.scale.FrequencyScale;
import evenwood.wiring.ChainReport;
import evenwood.wiring.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the wiring does to bass and treble, beside how far the take is from the sound such an instrument should have.
 *
 * <p>How: the chain's response against its own level at 1 kHz, and heard − wanted of every third octave. Where both fall
 * together it is the wiring. Drawn like the tone.
 *
 * @param curves {@code predicted} is the chain, {@code heard} the take's difference, {@code wanted} the tolerance round 0 dB
 * @param words  what the lines are, then what the comparison supports
 */
public record ResponsePicture(TonePicture curves, List<String> words) {
    private static final double TOP_DB = 18;
    private static final double REFERENCE_HZ = 1000;

    public static ResponsePicture of(ChainReport report, Optional<Assessment> heard, Words words) {
        List<Point> chain = new ArrayList<>();
        Response response = report.main().last().response();
        double reference = response.atHz(REFERENCE_HZ);
        for (int i = 0; i < Response.points(); i++) {
            if (Response.frequencyHz(i) >= FrequencyScale.INSTRUMENTS.lowestHz() && Response.frequencyHz(i) <= FrequencyScale.INSTRUMENTS.highestHz()) {
                chain.add(new Point(Response.frequencyHz(i), response.levelDb(i) - reference, 0));
            }
        }
        Optional<ToneComparison> tone = heard.flatMap(each -> each.verdict().tone());
        List<Point> difference = tone.map(each -> bands(each.difference(), false)).orElse(List.of());
        List<Point> tolerance = tone.map(each -> bands(each.difference(), true)).orElse(List.of());
        List<String> said = new ArrayList<>();
        said.add(words.say(difference.isEmpty() ? "wiring.curve-alone" : tone.get().against() == ToneComparison.Against.TAKE ? "wiring.curve-take" : "wiring.curve-both"));
        heard.flatMap(each -> each.verdict().wiring()).ifPresent(comparison ->
            comparison.statements().forEach(statement -> said.add(words.say("move.why", words.say(statement)))));
        return new ResponsePicture(new TonePicture(difference, tolerance, chain, List.of(), List.of(), TOP_DB, words.say("tone.axis", words.say("unit.db"))), List.copyOf(said));
    }

    /** Only bands that can be judged: what lies in the noise is no difference. */
    private static List<Point> bands(ToneDifference difference, boolean tolerance) {
        return difference.bands().stream().filter(band -> band.weight() > 0 && Double.isFinite(band.uncertaintyDb()))
            .map(band -> tolerance ? new Point(band.centreHz(), 0, band.toleranceDb()) : new Point(band.centreHz(), band.differenceDb(), band.uncertaintyDb())).toList();
    }
}
