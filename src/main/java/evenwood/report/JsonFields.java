package evenwood.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/**
 * Writes fields as all our JSON has them: what is absent, infinite or empty is {@code null}, numbers have at most four decimals.
 *
 * <p>It writes to memory, so nothing can fail on the way.
 */
final class JsonFields {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final int DECIMALS = 4;

    private final JsonGenerator json;

    private JsonFields(JsonGenerator json) {
        this.json = json;
    }

    /** An object over many lines, for people too. */
    static String object(String schema, Consumer<JsonFields> fields) {
        return written(true, schema, fields);
    }

    /** An object on one line, for a stream of lines. */
    static String line(String schema, Consumer<JsonFields> fields) {
        return written(false, schema, fields);
    }

    private static String written(boolean pretty, String schema, Consumer<JsonFields> fields) {
        StringWriter text = new StringWriter();
        try (JsonGenerator json = FACTORY.createGenerator(text)) {
            if (pretty) {
                json.useDefaultPrettyPrinter();
            }
            json.writeStartObject();
            json.writeStringField("schema", schema);
            fields.accept(new JsonFields(json));
            json.writeEndObject();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return text.toString();
    }

    /** What the generator does, which never fails in memory. */
    private interface Writing {
        void write() throws IOException;
    }

    private JsonFields with(Writing writing) {
        try {
            writing.write();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
        return this;
    }

    /** @param text null or empty becomes null */
    JsonFields text(String field, String text) {
        return with(() -> {
            if (text == null || text.isEmpty()) {
                json.writeNullField(field);
            } else {
                json.writeStringField(field, text);
            }
        });
    }

    JsonFields text(String field, Optional<String> text) {
        return text(field, text.orElse(null));
    }

    JsonFields number(String field, double value) {
        return with(() -> {
            if (Double.isFinite(value)) {
                json.writeNumberField(field, rounded(value));
            } else {
                json.writeNullField(field);
            }
        });
    }

    JsonFields number(String field, OptionalDouble value) {
        return number(field, value.orElse(Double.NEGATIVE_INFINITY));
    }

    JsonFields numbers(String field, double... values) {
        return with(() -> {
            json.writeArrayFieldStart(field);
            for (double value : values) {
                json.writeNumber(rounded(value));
            }
            json.writeEndArray();
        });
    }

    JsonFields count(String field, long count) {
        return with(() -> json.writeNumberField(field, count));
    }

    JsonFields flag(String field, boolean flag) {
        return with(() -> json.writeBooleanField(field, flag));
    }

    JsonFields nothing(String field) {
        return with(() -> json.writeNullField(field));
    }

    JsonFields texts(String field, Collection<String> texts) {
        return with(() -> {
            json.writeArrayFieldStart(field);
            for (String text : texts) {
                json.writeString(text);
            }
            json.writeEndArray();
        });
    }

    /** An object inside. */
    JsonFields part(String field, Consumer<JsonFields> fields) {
        return with(() -> {
            json.writeObjectFieldStart(field);
            fields.accept(this);
            json.writeEndObject();
        });
    }

    /** An object inside, or null. */
    <T> JsonFields part(String field, Optional<T> what, BiConsumer<JsonFields, T> fields) {
        return what.isPresent() ? part(field, inside -> fields.accept(inside, what.get())) : nothing(field);
    }

    /** An array of objects. */
    <T> JsonFields parts(String field, Collection<T> all, BiConsumer<JsonFields, T> fields) {
        return with(() -> {
            json.writeArrayFieldStart(field);
            for (T each : all) {
                json.writeStartObject();
                fields.accept(this, each);
                json.writeEndObject();
            }
            json.writeEndArray();
        });
    }

    /** A value that is JSON already. */
    JsonFields raw(String field, String value) {
        return with(() -> {
            json.writeFieldName(field);
            json.writeRawValue(value);
        });
    }

    /** {@code NEW_STRINGS} is {@code new-strings}. */
    static String word(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static BigDecimal rounded(double value) {
        return new BigDecimal(BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN).stripTrailingZeros().toPlainString());
    }
}
