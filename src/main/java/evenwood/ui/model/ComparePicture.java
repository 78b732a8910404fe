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
 * @param lines      settings and findings that differ
 * @param readings   level, noise and balance of both
 * @param known      what calling a change real rests on
 */
public record ComparePicture(String title, TonePicture tone, String toneWords, List<String> lines, List<Row> readings, String known) {
    private static final double TOP_DB = TonePicture.RANGE_DB / 2;
    /** Smaller differences nobody notices; our choice. */
    private static final double LEAST_TOLD_DB = 0.5;

    /**
     * One reading of both takes.
     *
     * @param change  later − earlier
     * @param verdict whether it is real, in words
     * @param isReal  chance hardly explains it, and it is large enough to be noticed
     */
    public record Row(String name, String before, String after, String change, String verdict, boolean isReal) { }

    public static ComparePicture of(TakeComparison both, Words words) {
        JournalWords journal = new JournalWords(words);
        List<Point> difference = both.tone().bands().stream().filter(band -> Double.isFinite(band.uncertaintyDb()) && band.weight() > 0)
            .map(band -> new Point(band.centreHz(), band.differenceDb(), band.uncertaintyDb())).toList();
        List<Point> none = both.tone().bands().stream().map(ToneDifference.Band::centreHz).map(hz -> new Point(hz, 0, 1)).toList();
        return new ComparePicture(words.say("journal.both", journal.when(both.before().line()), journal.when(both.after().line())),
            new TonePicture(difference, none, List.of(), List.of(), List.of(), TOP_DB, words.say("tone.axis", words.say("unit.db"))), journal.tone(both), journal.differences(both),
            both.readings().stream().filter(change -> TrendModel.READINGS.contains(change.reading().name())).map(change -> row(change, journal, words)).toList(),
            words.say(isScatterKnown(both) ? "journal.scatter-known" : "journal.scatter-unknown", Math.round(100 * TakeComparison.CONFIDENCE)));
    }

    private static boolean isScatterKnown(TakeComparison both) {
        return both.readings().stream().anyMatch(change -> change.scatter().isPresent());
    }

    private static Row row(TakeComparison.ReadingChange change, JournalWords journal, Words words) {
        boolean measured = Double.isFinite(change.before()) && Double.isFinite(change.after());
        boolean real = measured && change.isReal() && Math.abs(change.difference()) >= LEAST_TOLD_DB;
        String unit = change.reading().unit();
        String verdict = !measured || change.scatter().isEmpty() ? "" : words.say(real ? "journal.real" : "journal.chance", words.say("number.with-unit", words.number(change.scatter().getAsDouble(), 1), change.reading().differenceUnit()));
        return new Row(journal.reading(change.reading().name()), value(change.before(), unit, words), value(change.after(), unit, words),
            measured ? words.say("journal.changed", signed(change.difference(), words), change.reading().differenceUnit()) : "",
            verdict, real);
    }

    private static String signed(double difference, Words words) {
        double rounded = Math.rint(10 * difference) / 10;
        return (rounded > 0 ? "+" : "") + words.number(rounded, 1);
    }

    private static String value(double value, String unit, Words words) {
        return Double.isFinite(value) ? words.say("number.with-unit", words.number(value, 1), unit) : words.say("number.none");
    }
}
