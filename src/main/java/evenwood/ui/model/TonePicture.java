package evenwood.ui.model;

import evenwood.coach.Assessment;
import evenwood.coach.Prediction;
import evenwood.judge.Finding;
import evenwood.judge.Severity;
import evenwood.judge.ToneComparison;
import evenwood.measure.BandLevel;
import evenwood.measure.TakeReadings;
import evenwood.measure.ThirdOctave;
import evenwood.measure.ToneDifference;
import evenwood.rig.Rig;
import evenwood.rig.ToneTarget;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * How the sound is spread from bass to treble, beside how it should be.
 *
 * @param heard     what was heard; empty when nothing was played
 * @param wanted    what is wanted, with its tolerance; empty when nobody said what is wanted
 * @param predicted what the moves should make of it; empty without moves
 * @param before    what the take before was like; empty when there is none
 * @param tags      the faults that lie somewhere on the axis, lowest first
 * @param topDb     upper end of the axis
 * @param unit      what the axis counts, to stand behind each of its numbers
 */
public record TonePicture(List<Point> heard, List<Point> wanted, List<Point> predicted, List<Point> before, List<Tag> tags, double topDb, String unit) {
    public static final double RANGE_DB = 60;
    private static final double HEADROOM_DB = 4;
    private static final double USUAL_TOP_DB = 0;

    /** @param eitherSideDb how sure, or how tolerant: the half width of the band drawn round it; 0 when none is known */
    public record Point(double hz, double db, double eitherSideDb) { }

    /** @param word the fault's name  @param row words for the severity */
    public record Tag(String word, Severity severity, double lowHz, double highHz) { }

    public boolean isEmpty() {
        return heard.isEmpty();
    }

    /** @param rig what is played, so that the sound it should have is there before the first note */
    public static TonePicture of(Optional<Assessment> now, Optional<Assessment> before, Optional<Rig> rig, Words words) {
        List<Point> heard = now.map(each -> heard(each.readings())).orElse(List.of());
        List<Point> wanted = now.flatMap(each -> each.verdict().tone()).map(TonePicture::wanted)
            .orElseGet(() -> heard.isEmpty() ? rig.flatMap(each -> each.instrument().target()).map(TonePicture::usual).orElse(List.of()) : List.of());
        List<Point> predicted = now.map(TonePicture::predicted).orElse(List.of());
        List<Point> earlier = before.map(each -> heard(each.readings())).orElse(List.of());
        double top = USUAL_TOP_DB;
        for (List<Point> line : List.of(heard, wanted, earlier)) {
            top = Math.max(top, line.stream().mapToDouble(point -> point.db + point.eitherSideDb).max().orElse(top));
        }
        return new TonePicture(heard, wanted, predicted, earlier, now.map(each -> tags(each, words)).orElse(List.of()),
            Math.ceil(top + HEADROOM_DB), words.say("tone.axis", words.say("unit.db")));
    }

    private static List<Point> heard(TakeReadings readings) {
        if (!readings.hasPlaying()) {
            return List.of();
        }
        List<Point> points = new ArrayList<>();
        for (BandLevel band : readings.spectrum().bands()) {
            if (Double.isFinite(band.relativeDb())) {
                points.add(new Point(band.band().centreHz(), band.relativeDb(), Double.isFinite(band.relativeHalfWidthDb()) ? band.relativeHalfWidthDb() : 0));
            }
        }
        return points;
    }

    private static List<Point> wanted(ToneComparison tone) {
        List<Point> points = new ArrayList<>();
        for (ToneDifference.Band band : tone.difference().bands()) {
            Double wanted = tone.wantedDb().get(band.band());
            if (wanted != null && Double.isFinite(wanted)) {
                points.add(new Point(band.centreHz(), wanted, band.toleranceDb()));
            }
        }
        return points;
    }

    private static List<Point> usual(ToneTarget target) {
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < ToneTarget.BANDS; i++) {
            points.add(new Point(ThirdOctave.FROM_50_HZ_TO_16_KHZ.get(i).centreHz(), target.levelDb().get(i), target.toleranceDb().get(i)));
        }
        return points;
    }

    private static List<Point> predicted(Assessment assessment) {
        Optional<ToneDifference> after = assessment.predicted().filter(each -> !each.change().filters().isEmpty()).flatMap(Prediction::tone);
        Optional<ToneComparison> tone = assessment.verdict().tone();
        if (after.isEmpty() || tone.isEmpty()) {
            return List.of();
        }
        Map<ThirdOctave, Double> wanted = tone.get().wantedDb();
        return after.get().bands().stream().filter(band -> wanted.containsKey(band.band()) && Double.isFinite(wanted.get(band.band())))
            .map(band -> new Point(band.centreHz(), wanted.get(band.band()) + band.differenceDb(), 0)).toList();
    }

    private static List<Tag> tags(Assessment assessment, Words words) {
        return assessment.verdict().findings().stream().filter(finding -> finding.bandHz().isPresent())
            .sorted(java.util.Comparator.comparingDouble(TonePicture::middleHz))
            .map(finding -> new Tag(words.fault(finding.fault()), finding.severity(), finding.bandHz().get().lowHz(), finding.bandHz().get().highHz())).toList();
    }

    private static double middleHz(Finding finding) {
        return Math.sqrt(Math.max(1, finding.bandHz().orElseThrow().lowHz()) * finding.bandHz().orElseThrow().highHz());
    }
}
