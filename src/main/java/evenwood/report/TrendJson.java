package evenwood.report;

import evenwood.journal.Change;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.Trend;
import java.time.Instant;
import java.util.List;

/** What the journal concludes from several takes, as JSON. */
public final class TrendJson {
    private TrendJson() { }

    /** {@code evenwood.journal-trend/1} */
    public static String of(Trend trend) {
        return JsonFields.object("evenwood.journal-trend/1", json -> json
            .text("reading", trend.reading().name())
            .text("unit", trend.reading().unit())
            .parts("points", trend.points(), (part, point) -> part
                .count("take", point.takeId()).text("keptAt", Instant.ofEpochMilli(point.keptMillis()).toString()).number("value", point.value()))
            .flag("enough", trend.isEnough())
            .parts("changes", trend.changes(), TrendJson::change));
    }

    /** {@code evenwood.journal-suspicions/1} */
    public static String of(List<Suspicion> suspicions, Sentences sentences) {
        TrendText words = new TrendText(sentences);
        return JsonFields.object("evenwood.journal-suspicions/1", json -> json.parts("suspicions", suspicions, (part, suspicion) -> {
            part.text("suspected", JsonFields.word(suspicion.kind())).text("evidence", words.line(suspicion));
            change(part, suspicion.change());
        }));
    }

    private static void change(JsonFields json, Change change) {
        json.text("kind", JsonFields.word(change.kind()))
            .text("from", change.from().toString())
            .text("to", change.to().toString())
            .number("change", change.amount())
            .number("lowest", change.lowest())
            .number("highest", change.highest())
            .number("confidence", change.confidence())
            .count("takes", change.takes())
            .text("event", change.event().map(event -> event.kind().id()));
    }

    /** {@code evenwood.journal-compare/1} */
    public static String of(TakeComparison both) {
        return JsonFields.object("evenwood.journal-compare/1", json -> json
            .count("before", both.before().line().id())
            .count("after", both.after().line().id())
            .number("confidence", TakeComparison.CONFIDENCE)
            .parts("readings", both.readings(), (part, change) -> part
                .text("reading", change.reading().name())
                .text("unit", change.reading().unit())
                .number("before", change.before())
                .number("after", change.after())
                .number("usualScatter", change.scatter())
                .flag("real", change.isReal()))
            .parts("settings", both.settings(), (part, setting) -> part
                .text("control", setting.control()).text("before", setting.before()).text("after", setting.after()))
            .texts("gone", both.gone())
            .texts("come", both.come())
            .flag("toneOfSharedNotes", both.noteWise())
            .parts("bands", both.tone().bands(), (part, band) -> part
                .number("centreHz", band.centreHz()).number("differenceDb", band.differenceDb()).number("uncertaintyDb", band.uncertaintyDb())));
    }
}
