package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import evenwood.rig.PresetKind;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;

/** The ids of all presets by kind, as one JSON object. */
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
}
