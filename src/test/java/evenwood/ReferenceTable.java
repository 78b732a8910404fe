package evenwood;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Rows of a table in {@code src/test/resources/reference}: a line with # (units and source), a header, then values. */
public final class ReferenceTable {
    private ReferenceTable() { }

    /** One row: values by column name. */
    public record Row(Map<String, String> values) {
        public String text(String column) {
            String value = values.get(column);
            if (value == null) {
                throw new IllegalArgumentException("reference table: column=" + column + ", but there are " + values.keySet());
            }
            return value;
        }

        public double number(String column) {
            return switch (text(column)) {
                case "inf" -> Double.POSITIVE_INFINITY;
                case "-inf" -> Double.NEGATIVE_INFINITY;
                default -> Double.parseDouble(text(column));
            };
        }

        public int integer(String column) {
            return Integer.parseInt(text(column));
        }

        /** Short enough for a test's name. */
        @Override
        public String toString() {
            return String.join(" ", values.values());
        }
    }

    public static List<Row> read(String name) {
        try (InputStream in = ReferenceTable.class.getResourceAsStream("/reference/" + name)) {
            if (in == null) {
                throw new IllegalArgumentException("reference table: " + name + " is not in src/test/resources/reference");
            }
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                .filter(line -> !line.startsWith("#") && !line.isBlank()).toList();
            List<String> header = cells(lines.get(0));
            List<Row> rows = new ArrayList<>();
            for (String line : lines.subList(1, lines.size())) {
                List<String> cells = cells(line);
                Map<String, String> values = new LinkedHashMap<>();
                for (int i = 0; i < header.size(); i++) {
                    values.put(header.get(i), i < cells.size() ? cells.get(i) : "");
                }
                rows.add(new Row(values));
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> cells(String line) {
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        for (char c : line.toCharArray()) {
            if (c == '"') {
                quoted = !quoted;
            } else if (c == ',' && !quoted) {
                cells.add(cell.toString());
                cell.setLength(0);
            } else {
                cell.append(c);
            }
        }
        cells.add(cell.toString());
        return cells;
    }
}
