package evenwood.report;

import evenwood.journal.Change;
import evenwood.journal.ReadingPoint;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.Trend;
import evenwood.measure.ToneDifference;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What the journal concludes from several takes, in words. */
public final class TrendText {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("yyyy-MM-dd", Locale.ROOT);
    private static final String STEPS = "▁▂▃▄▅▆▇█";
    private static final int PICTURE_WIDTH = 60;

    private final Sentences sentences;
    private final JournalText journal;

    public TrendText(Sentences sentences) {
        this.sentences = sentences;
        journal = new JournalText(sentences);
    }

    /** First to last value, a small picture, events, and what is no chance. */
    public List<String> lines(Trend trend) {
        List<String> lines = new ArrayList<>();
        if (trend.points().isEmpty()) {
            lines.add(sentences.say("journal.trend-none", trend.reading().name()));
            return lines;
        }
        ReadingPoint first = trend.points().get(0);
        ReadingPoint last = trend.points().get(trend.points().size() - 1);
        lines.add(sentences.say("journal.trend-head", trend.reading().name(), sentences.level(first.value()), sentences.level(last.value()), trend.reading().unit(),
            trend.points().size(), day(first), day(last)));
        lines.add("  " + picture(trend.points()));
        trend.events().forEach(event -> lines.add("  " + journal.line(event)));
        if (!trend.isEnough()) {
            lines.add(sentences.say("journal.trend-too-few", trend.points().size()));
        } else if (trend.changes().isEmpty()) {
            lines.add(sentences.say("journal.trend-steady", percent(Trend.CONFIDENCE)));
        }
        trend.changes().forEach(change -> lines.add(change(change, trend.reading().differenceUnit())));
        return lines;
    }

    private String change(Change change, String unit) {
        String key = "journal.change-" + change.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        String at = change.event().map(event -> journal.kind(event.kind())).orElse("");
        return sentences.say(key, change.amount() > 0 ? 1 : 0, Math.abs(change.amount()), unit, least(change), most(change), percent(change.confidence()),
            day(change.from()), day(change.to()), at);
    }

    public String line(Suspicion suspicion) {
        Change change = suspicion.change();
        String key = "journal." + suspicion.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        String since = suspicion.since().map(event -> sentences.say("journal.since-event", day(event.at().toInstant()))).orElseGet(() -> sentences.say("journal.since-day", day(change.from())));
        return sentences.say(key, since, Math.abs(change.amount()), least(change), most(change), percent(change.confidence()));
    }

    /** Two takes: only what is no chance is called a change. */
    public List<String> lines(TakeComparison both) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(Locale.ROOT, "%-7s %s", sentences.say("journal.compare-before"), journal.line(both.before().line()).strip()));
        lines.add(String.format(Locale.ROOT, "%-7s %s", sentences.say("journal.compare-after"), journal.line(both.after().line()).strip()));
        lines.add("");
        both.settings().forEach(setting -> lines.add(setting.control() + ": " + setting.before().orElse(sentences.say("journal.not-there")) + " → " + setting.after().orElse(sentences.say("journal.not-there"))));
        if (!both.gone().isEmpty()) {
            lines.add(sentences.say("journal.gone", String.join(", ", both.gone())));
        }
        if (!both.come().isEmpty()) {
            lines.add(sentences.say("journal.come", String.join(", ", both.come())));
        }
        lines.add(String.format(Locale.ROOT, "%-22s %9s %9s %9s", "", sentences.say("journal.column-before"), sentences.say("journal.column-after"), sentences.say("journal.column-change")));
        for (TakeComparison.ReadingChange change : both.readings()) {
            lines.add(String.format(Locale.ROOT, "%-22s %9s %9s %9s %-8s %s", change.reading().name(), sentences.level(change.before()), sentences.level(change.after()),
                signed(change.difference()), change.reading().differenceUnit(), sure(change)).stripTrailing());
        }
        lines.add("");
        lines.add(sentences.say(both.noteWise() ? "journal.tone-of-notes" : "journal.tone-of-takes"));
        for (ToneDifference.Band band : both.tone().bands()) {
            lines.add(String.format(Locale.ROOT, "%9s %9s dB ±%-6s %s", band.band().nominalName(), signed(band.differenceDb()), sentences.level(band.uncertaintyDb()),
                Math.abs(band.differenceDb()) > band.uncertaintyDb() + band.toleranceDb() ? sentences.say("journal.real") : "").stripTrailing());
        }
        return lines;
    }

    private String sure(TakeComparison.ReadingChange change) {
        return change.isReal() ? sentences.say("journal.real") : change.scatter().isPresent() ? "" : sentences.say("journal.scatter-unknown");
    }

    private String signed(double db) {
        return (db > 0 ? "+" : "") + sentences.level(db);
    }

    private static double least(Change change) {
        return Math.min(Math.abs(change.lowest()), Math.abs(change.highest()));
    }

    private static double most(Change change) {
        return Math.max(Math.abs(change.lowest()), Math.abs(change.highest()));
    }

    private static long percent(double confidence) {
        return Math.round(100 * confidence);
    }

    /** Low to high, as wide as a line; neighbours share a column when there are many. */
    private static String picture(List<ReadingPoint> points) {
        int columns = Math.min(PICTURE_WIDTH, points.size());
        double[] means = new double[columns];
        for (int i = 0; i < columns; i++) {
            means[i] = points.subList(i * points.size() / columns, Math.max(i * points.size() / columns + 1, (i + 1) * points.size() / columns)).stream()
                .mapToDouble(ReadingPoint::value).average().orElse(0);
        }
        double least = java.util.Arrays.stream(means).min().orElse(0);
        double most = java.util.Arrays.stream(means).max().orElse(0);
        StringBuilder picture = new StringBuilder();
        for (double mean : means) {
            picture.append(STEPS.charAt(most == least ? 0 : (int) Math.round((mean - least) / (most - least) * (STEPS.length() - 1))));
        }
        return picture.toString();
    }

    private static String day(ReadingPoint point) {
        return day(Instant.ofEpochMilli(point.keptMillis()));
    }

    private static String day(Instant time) {
        return DAY.format(time.atZone(ZoneId.systemDefault()));
    }
}
