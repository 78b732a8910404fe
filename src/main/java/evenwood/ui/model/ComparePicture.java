package evenwood.ui.model;

import evenwood.journal.TakeComparison;
import evenwood.measure.ToneDifference;
import evenwood.ui.model.TonePicture.Point;
import java.util.List;

/**
 * Two kept takes beside each other.
 *
 * @param title      which, the earlier first
 * @param tone       later − earlier with how sure it is; the ribbon round 0 dB is no change
 * @param toneWords  what the curve rests on
 * @param lines      what else differs
 */
public record ComparePicture(String title, TonePicture tone, String toneWords, List<String> lines) {
    private static final double TOP_DB = TonePicture.RANGE_DB / 2;

    public static ComparePicture of(TakeComparison both, Words words) {
        JournalWords journal = new JournalWords(words);
        List<Point> difference = both.tone().bands().stream().filter(band -> Double.isFinite(band.uncertaintyDb()) && band.weight() > 0)
            .map(band -> new Point(band.centreHz(), band.differenceDb(), band.uncertaintyDb())).toList();
        List<Point> none = both.tone().bands().stream().map(ToneDifference.Band::centreHz).map(hz -> new Point(hz, 0, 1)).toList();
        return new ComparePicture(words.say("journal.both", journal.when(both.before().line()), journal.when(both.after().line())),
            new TonePicture(difference, none, List.of(), List.of(), List.of(), TOP_DB, words.say("unit.db")), journal.tone(both), journal.differences(both));
    }
}
