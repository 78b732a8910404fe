package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.rig.PresetKind;
import evenwood.rig.PresetText;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/** Presets for programs: the ids by kind, or one preset with its fields. */
public final class PresetsJson {
    private PresetsJson() { }

    public static String of(Map<PresetKind, List<String>> ids) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeStringField("schema", "evenwood.presets/1");
            for (Map.Entry<PresetKind, List<String>> kind : ids.entrySet()) {
                json.writeArrayFieldStart(kind.getKey().folder());
                for (String id : kind.getValue()) {
                    json.writeString(id);
                }
                json.writeEndArray();
            }
            json.writeEndObject();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    /** One preset with all its fields. */
    public static String of(PresetKind kind, PresetText preset) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.useDefaultPrettyPrinter();
            json.writeStartObject();
            json.writeStringField("schema", "evenwood.preset/1");
            json.writeStringField("kind", kind.folder());
            json.writeStringField("file", preset.file());
            json.writeFieldName("preset");
            value(json, preset.fields());
            json.writeEndObject();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    private static void value(JsonGenerator json, Object value) throws IOException {
        if (value instanceof Map<?, ?> fields) {
            json.writeStartObject();
            for (Map.Entry<?, ?> field : fields.entrySet()) {
                json.writeFieldName(field.getKey().toString());
                value(json, field.getValue());
            }
            json.writeEndObject();
        } else if (value instanceof List<?> items) {
            json.writeStartArray();
            for (Object item : items) {
                value(json, item);
            }
            json.writeEndArray();
        } else if (value instanceof Number number) {
            json.writeNumber(new BigDecimal(number.toString()));
        } else if (value instanceof Boolean truth) {
            json.writeBoolean(truth);
        } else if (value == null) {
            json.writeNull();
        } else {
            json.writeString(value.toString());
        }
    }
}
