package evenwood.journal;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.lang.reflect.Array;
import java.lang.reflect.Constructor;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Makes records again of what {@link RecordWriter} wrote.
 *
 * <p>A journal outlives the program's versions: a field nobody knows any more is passed over, and a component that was not
 * written in its day stands as not measured ({@link #absent}).
 */
final class RecordReader {
    private final JsonParser json;

    /** @param json standing on the first token of the value, or before anything was read */
    RecordReader(JsonParser json) {
        this.json = json;
    }

    <T extends Record> T read(Class<T> type) throws IOException {
        if (json.currentToken() == null) {
            json.nextToken();
        }
        return type.cast(value(type));
    }

    private Object value(Type type) throws IOException {
        if (type instanceof ParameterizedType parameterized) {
            return container(parameterized);
        }
        Class<?> plain = (Class<?>) type;
        if (plain == OptionalDouble.class) {
            return json.currentToken() == JsonToken.VALUE_NULL ? OptionalDouble.empty() : OptionalDouble.of(number());
        }
        if (json.currentToken() == JsonToken.VALUE_NULL) {
            return absent(type);
        }
        if (plain.isRecord() || plain.isInterface() && plain.isSealed()) {
            return record(plain);
        }
        return plain.isArray() ? array(plain.getComponentType()) : scalar(plain);
    }

    private Object container(ParameterizedType type) throws IOException {
        Class<?> raw = (Class<?>) type.getRawType();
        Type inner = type.getActualTypeArguments()[0];
        if (raw == Optional.class) {
            return json.currentToken() == JsonToken.VALUE_NULL ? Optional.empty() : Optional.of(value(inner));
        }
        if (raw == List.class) {
            List<Object> list = new ArrayList<>();
            while (json.nextToken() != JsonToken.END_ARRAY) {
                list.add(value(inner));
            }
            return list;
        }
        if (raw == Map.class) {
            Map<Object, Object> map = new LinkedHashMap<>();
            while (json.nextToken() != JsonToken.END_ARRAY) {
                json.nextToken();
                Object key = value(inner);
                json.nextToken();
                map.put(key, value(type.getActualTypeArguments()[1]));
                json.nextToken();
            }
            return map;
        }
        throw unknown(type);
    }

    private Object record(Class<?> declared) throws IOException {
        Class<?> type = declared;
        RecordComponent[] components = type.isRecord() ? type.getRecordComponents() : null;
        Object[] values = components == null ? null : new Object[components.length];
        while (json.nextToken() == JsonToken.FIELD_NAME) {
            String name = json.currentName();
            json.nextToken();
            if (name.equals(RecordWriter.WHICH) && components == null) {
                type = permitted(declared, json.getText());
                components = type.getRecordComponents();
                values = new Object[components.length];
            } else {
                put(name, components, values);
            }
        }
        if (components == null) {
            throw new IOException("a " + declared.getSimpleName() + " does not say which one it is");
        }
        return made(type, components, values);
    }

    private void put(String name, RecordComponent[] components, Object[] values) throws IOException {
        for (int i = 0; components != null && i < components.length; i++) {
            if (components[i].getName().equals(name)) {
                values[i] = value(components[i].getGenericType());
                return;
            }
        }
        json.skipChildren();
    }

    private static Class<?> permitted(Class<?> declared, String name) throws IOException {
        if (declared.isRecord()) {
            return declared;
        }
        return Arrays.stream(declared.getPermittedSubclasses()).filter(each -> each.getSimpleName().equals(name)).findFirst()
            .orElseThrow(() -> new IOException(name + " is no " + declared.getSimpleName()));
    }

    private static Object made(Class<?> type, RecordComponent[] components, Object[] values) throws IOException {
        Class<?>[] types = new Class<?>[components.length];
        for (int i = 0; i < components.length; i++) {
            types[i] = components[i].getType();
            values[i] = values[i] == null ? absent(components[i].getGenericType()) : values[i];
        }
        try {
            Constructor<?> constructor = type.getDeclaredConstructor(types);
            constructor.setAccessible(true);
            return constructor.newInstance(values);
        } catch (ReflectiveOperationException problem) {
            Throwable cause = problem.getCause() == null ? problem : problem.getCause();
            throw new IOException("no " + type.getSimpleName() + " can be made of what stands there (" + cause.getMessage() + ")", problem);
        }
    }

    /** What stands for something that was not kept: nothing, none, −Infinity, 0; of a choice its first. */
    private static Object absent(Type type) throws IOException {
        Class<?> raw = type instanceof ParameterizedType parameterized ? (Class<?>) parameterized.getRawType() : (Class<?>) type;
        if (raw == Optional.class) {
            return Optional.empty();
        }
        if (raw == OptionalDouble.class) {
            return OptionalDouble.empty();
        }
        if (raw == List.class) {
            return List.of();
        }
        if (raw == Map.class) {
            return Map.of();
        }
        if (raw.isArray()) {
            return Array.newInstance(raw.getComponentType(), 0);
        }
        if (raw.isRecord()) {
            RecordComponent[] components = raw.getRecordComponents();
            return made(raw, components, new Object[components.length]);
        }
        if (raw.isEnum()) {
            return raw.getEnumConstants()[0];
        }
        return raw == double.class ? Double.NEGATIVE_INFINITY : raw == int.class ? 0 : raw == long.class ? (Object) 0L
            : raw == boolean.class ? false : raw == String.class ? "" : fail(raw);
    }

    private static Object fail(Class<?> raw) {
        throw unknown(raw);
    }

    private Object array(Class<?> element) throws IOException {
        if (element == byte.class) {
            return json.getBinaryValue();
        }
        List<Object> read = new ArrayList<>();
        while (json.nextToken() != JsonToken.END_ARRAY) {
            read.add(scalar(element));
        }
        Object array = Array.newInstance(element, read.size());
        for (int i = 0; i < read.size(); i++) {
            Array.set(array, i, read.get(i));
        }
        return array;
    }

    @SuppressWarnings({"unchecked", "rawtypes"})
    private Object scalar(Class<?> type) throws IOException {
        if (type.isEnum()) {
            return Enum.valueOf((Class) type, json.getText());
        }
        if (type == double.class || type == Double.class) {
            return number();
        }
        if (type == int.class || type == Integer.class) {
            return json.getIntValue();
        }
        if (type == long.class) {
            return json.getLongValue();
        }
        if (type == boolean.class || type == Boolean.class) {
            return json.getBooleanValue();
        }
        if (type == String.class) {
            return json.getText();
        }
        if (type == OffsetDateTime.class) {
            return OffsetDateTime.parse(json.getText());
        }
        if (type == Object.class) {
            return figure();
        }
        throw unknown(type);
    }

    /** A figure of a sentence: whole numbers are counts and must not come back as fractions. */
    private Object figure() throws IOException {
        return switch (json.currentToken()) {
            case VALUE_NUMBER_INT -> json.getNumberValue();
            case VALUE_NUMBER_FLOAT -> number();
            case VALUE_TRUE, VALUE_FALSE -> json.getBooleanValue();
            default -> json.getText();
        };
    }

    private double number() throws IOException {
        return json.currentToken() == JsonToken.VALUE_STRING ? Double.parseDouble(json.getText()) : json.getDoubleValue();
    }

    private static IllegalArgumentException unknown(Type type) {
        return new IllegalArgumentException("journal: a " + type.getTypeName() + " cannot be read back; teach RecordWriter and RecordReader");
    }
}
