package evenwood.report;

import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.journal.Change;
import evenwood.journal.ReadingPoint;
import evenwood.journal.Suspicion;
import evenwood.journal.TakeComparison;
import evenwood.journal.Trend;
import evenwood.measure.ToneDifference;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;

/** What the journal concludes from several takes, as JSON. */
public final class TrendJson {
    private TrendJson() { }

    /** {@code evenwood.journal-trend/1} */
    public static String of(Trend trend) {
        return JournalJson.object("evenwood.journal-trend/1", json -> {
            json.writeStringField("reading", trend.reading().name());
            json.writeStringField("unit", trend.reading().unit());
            json.writeArrayFieldStart("points");
            for (ReadingPoint point : trend.points()) {
                json.writeStartObject();
                json.writeNumberField("take", point.takeId());
                json.writeStringField("keptAt", Instant.ofEpochMilli(point.keptMillis()).toString());
                json.writeNumberField("value", point.value());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeBooleanField("enough", trend.isEnough());
            json.writeArrayFieldStart("changes");
            for (Change change : trend.changes()) {
                json.writeStartObject();
                change(json, change);
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    /** {@code evenwood.journal-suspicions/1} */
    public static String of(List<Suspicion> suspicions, Sentences sentences) {
        return JournalJson.object("evenwood.journal-suspicions/1", json -> {
            json.writeArrayFieldStart("suspicions");
            for (Suspicion suspicion : suspicions) {
                json.writeStartObject();
                json.writeStringField("suspected", suspicion.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
                json.writeStringField("evidence", new TrendText(sentences).line(suspicion));
                change(json, suspicion.change());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    private static void change(JsonGenerator json, Change change) throws IOException {
        json.writeStringField("kind", change.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        json.writeStringField("from", change.from().toString());
        json.writeStringField("to", change.to().toString());
        JournalJson.number(json, "change", change.amount());
        JournalJson.number(json, "lowest", change.lowest());
        JournalJson.number(json, "highest", change.highest());
        JournalJson.number(json, "confidence", change.confidence());
        json.writeNumberField("takes", change.takes());
        JournalJson.text(json, "event", change.event().map(event -> event.kind().id()).orElse(""));
    }

    /** {@code evenwood.journal-compare/1} */
    public static String of(TakeComparison both) {
        return JournalJson.object("evenwood.journal-compare/1", json -> {
            json.writeNumberField("before", both.before().line().id());
            json.writeNumberField("after", both.after().line().id());
            JournalJson.number(json, "confidence", TakeComparison.CONFIDENCE);
            json.writeArrayFieldStart("readings");
            for (TakeComparison.ReadingChange change : both.readings()) {
                json.writeStartObject();
                json.writeStringField("reading", change.reading().name());
                json.writeStringField("unit", change.reading().unit());
                JournalJson.number(json, "before", change.before());
                JournalJson.number(json, "after", change.after());
                JournalJson.number(json, "usualScatter", change.scatter().orElse(Double.NEGATIVE_INFINITY));
                json.writeBooleanField("real", change.isReal());
                json.writeEndObject();
            }
            json.writeEndArray();
            json.writeArrayFieldStart("settings");
            for (TakeComparison.SettingChange setting : both.settings()) {
                json.writeStartObject();
                json.writeStringField("control", setting.control());
                JournalJson.text(json, "before", setting.before().orElse(""));
                JournalJson.text(json, "after", setting.after().orElse(""));
                json.writeEndObject();
            }
            json.writeEndArray();
            JournalJson.strings(json, "gone", both.gone());
            JournalJson.strings(json, "come", both.come());
            json.writeBooleanField("toneOfSharedNotes", both.noteWise());
            json.writeArrayFieldStart("bands");
            for (ToneDifference.Band band : both.tone().bands()) {
                json.writeStartObject();
                JournalJson.number(json, "centreHz", band.centreHz());
                JournalJson.number(json, "differenceDb", band.differenceDb());
                JournalJson.number(json, "uncertaintyDb", band.uncertaintyDb());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }
}
