package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.journal.Event;
import evenwood.journal.KeptTake;
import evenwood.journal.Practice;
import evenwood.journal.TakeLine;
import evenwood.rig.Setting;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/**
 * What the journal's commands print with {@code --json}. Field names are stable; an absent value is {@code null}.
 *
 * <p>Kept readings with every digit come from {@code journal export}; here a take is as {@code check --json} prints it.
 */
public final class JournalJson {
    private static final JsonFactory FACTORY = new JsonFactory();

    private JournalJson() { }

    /** Writes the fields of one object. */
    interface Fields {
        void write(JsonGenerator json) throws IOException;
    }

    public static String list(List<TakeLine> takes) {
        return object("evenwood.journal-list/1", json -> {
            json.writeArrayFieldStart("takes");
            for (TakeLine take : takes) {
                json.writeStartObject();
                take(json, take);
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    /** The take's line, its settings, and under {@code check} all of that day's result. */
    public static String show(KeptTake take, List<Event> events, Sentences sentences) {
        return object("evenwood.journal-take/1", json -> {
            take(json, take.line());
            json.writeArrayFieldStart("settings");
            for (Setting setting : take.rig().map(rig -> rig.settings()).orElse(List.of())) {
                json.writeStartObject();
                json.writeStringField("control", setting.control().name());
                json.writeStringField("position", setting.say());
                json.writeEndObject();
            }
            json.writeEndArray();
            events(json, events);
            json.writeFieldName("check");
            json.writeRawValue(CheckJson.line(take.assessment(), sentences));
        });
    }

    public static String events(List<Event> events) {
        return object("evenwood.journal-events/1", json -> events(json, events));
    }

    public static String practice(List<Practice> sittings) {
        return object("evenwood.journal-practice/1", json -> {
            json.writeArrayFieldStart("practice");
            for (Practice sitting : sittings) {
                Practice.Figures heard = sitting.figures();
                json.writeStartObject();
                json.writeStringField("at", sitting.at().toString());
                text(json, "instrument", sitting.instrument());
                number(json, "listenedSeconds", heard.listenedSeconds());
                number(json, "playingSeconds", heard.playingSeconds());
                json.writeNumberField("notes", heard.notes());
                number(json, "softDbfs", heard.softDbfs());
                number(json, "usualDbfs", heard.usualDbfs());
                number(json, "hardDbfs", heard.hardDbfs());
                number(json, "integratedLufs", heard.integratedLufs());
                number(json, "lowDb", heard.lowDb());
                number(json, "midDb", heard.midDb());
                number(json, "highDb", heard.highDb());
                number(json, "truePeakDbtp", heard.truePeakDbtp());
                json.writeNumberField("clippedSamples", heard.clippedSamples());
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    private static void events(JsonGenerator json, List<Event> events) throws IOException {
        json.writeArrayFieldStart("events");
        for (Event event : events) {
            json.writeStartObject();
            json.writeStringField("at", event.at().toString());
            json.writeStringField("kind", event.kind().id());
            text(json, "instrument", event.instrument());
            text(json, "note", event.note());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void take(JsonGenerator json, TakeLine take) throws IOException {
        json.writeNumberField("id", take.id());
        json.writeStringField("uid", take.uid());
        json.writeStringField("keptAt", take.keptAt().toString());
        json.writeStringField("name", take.name());
        number(json, "durationSeconds", take.durationSeconds());
        text(json, "instrument", take.instrument());
        text(json, "rig", take.rigName());
        text(json, "venue", take.venue());
        text(json, "note", take.note());
        strings(json, "tags", take.tags());
        json.writeArrayFieldStart("findings");
        for (String fault : take.faults()) {
            String[] parts = fault.split(":");
            json.writeStartObject();
            json.writeStringField("fault", parts[0]);
            json.writeStringField("severity", parts[1]);
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeBooleanField("sound", take.hasAudio());
    }

    static String object(String schema, Fields fields) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text).useDefaultPrettyPrinter()) {
            json.writeStartObject();
            json.writeStringField("schema", schema);
            fields.write(json);
            json.writeEndObject();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    static void strings(JsonGenerator json, String field, List<String> words) throws IOException {
        json.writeArrayFieldStart(field);
        for (String word : words) {
            json.writeString(word);
        }
        json.writeEndArray();
    }

    static void text(JsonGenerator json, String field, String text) throws IOException {
        if (text.isEmpty()) {
            json.writeNullField(field);
        } else {
            json.writeStringField(field, text);
        }
    }

    static void number(JsonGenerator json, String field, double value) throws IOException {
        if (Double.isFinite(value)) {
            json.writeNumberField(field, Math.rint(value * 1e4) / 1e4 + 0.0);
        } else {
            json.writeNullField(field);
        }
    }
}
