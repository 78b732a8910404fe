package evenwood.journal;

import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.lang.reflect.Array;
import java.lang.reflect.RecordComponent;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Writes any record of ours as JSON, component by component, so that {@link RecordReader} makes an equal one of it.
 *
 * <p>How: a record is an object with its components' names; an absent {@code Optional} is {@code null}; a map is an array of
 * pairs; an array of bytes is base64; a record that is one of several of a sealed interface first says which one it
 * {@code is}. Numbers are written so that the same bits are read back ({@link Double#toString}); infinities as text.
 * <p>Why by reflection: a new reading is kept without anybody having to remember the journal.
 */
final class RecordWriter {
    static final String WHICH = "is";

    private final JsonGenerator json;

    RecordWriter(JsonGenerator json) {
        this.json = json;
    }

    void write(Object value) throws IOException {
        if (value instanceof Optional<?> optional) {
            write(optional.orElse(null));
        } else if (value instanceof OptionalDouble optional) {
            plain(optional.isPresent() ? optional.getAsDouble() : null);
        } else if (value instanceof Record record) {
            fields(record);
        } else if (value instanceof List<?> list) {
            json.writeStartArray();
            for (Object each : list) {
                write(each);
            }
            json.writeEndArray();
        } else if (value instanceof Map<?, ?> map) {
            pairs(map);
        } else if (value instanceof byte[] bytes) {
            json.writeBinary(bytes);
        } else if (value != null && value.getClass().isArray()) {
            elements(value);
        } else {
            plain(value);
        }
    }

    private void fields(Record record) throws IOException {
        json.writeStartObject();
        for (Class<?> parent : record.getClass().getInterfaces()) {
            if (parent.isSealed()) {
                json.writeStringField(WHICH, record.getClass().getSimpleName());
            }
        }
        for (RecordComponent component : record.getClass().getRecordComponents()) {
            json.writeFieldName(component.getName());
            write(value(component, record));
        }
        json.writeEndObject();
    }

    private static Object value(RecordComponent component, Record record) {
        try {
            component.getAccessor().setAccessible(true);
            return component.getAccessor().invoke(record);
        } catch (ReflectiveOperationException cannotHappen) {
            throw new IllegalStateException("journal: " + record.getClass().getName() + "." + component.getName() + " cannot be read", cannotHappen);
        }
    }

    private void pairs(Map<?, ?> map) throws IOException {
        json.writeStartArray();
        for (Map.Entry<?, ?> entry : map.entrySet()) {
            json.writeStartArray();
            write(entry.getKey());
            write(entry.getValue());
            json.writeEndArray();
        }
        json.writeEndArray();
    }

    private void elements(Object array) throws IOException {
        json.writeStartArray();
        for (int i = 0; i < Array.getLength(array); i++) {
            plain(Array.get(array, i));
        }
        json.writeEndArray();
    }

    private void plain(Object value) throws IOException {
        if (value == null) {
            json.writeNull();
        } else if (value instanceof Double number) {
            json.writeNumber(number);
        } else if (value instanceof Integer number) {
            json.writeNumber(number);
        } else if (value instanceof Long number) {
            json.writeNumber(number);
        } else if (value instanceof Boolean flag) {
            json.writeBoolean(flag);
        } else if (value instanceof String text) {
            json.writeString(text);
        } else if (value instanceof OffsetDateTime time) {
            json.writeString(time.toString());
        } else if (value instanceof Enum<?> constant) {
            json.writeString(constant.name());
        } else {
            throw new IllegalArgumentException("journal: a " + value.getClass().getName() + " cannot be kept; teach RecordWriter and RecordReader");
        }
    }
}
