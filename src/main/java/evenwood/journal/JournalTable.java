package evenwood.journal;

import java.io.IOException;
import java.io.Writer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * The takes as a table for a spreadsheet: a line a take, a column for each reading.
 *
 * <p>How: comma-separated values, UTF-8, RFC 4180 (fields in quotes where they need it, lines end in CR LF); an absent reading
 * is an empty field, decimals have a point.
 */
public final class JournalTable {
    private static final List<String> WORDS = List.of("id", "keptAt", "name", "durationSeconds", "instrument", "rig", "venue", "note", "tags", "findings");

    private JournalTable() { }

    public static void write(Journal journal, TakeFilter filter, Path file) {
        write(journal, filter, file, ExportSteps.ALL);
    }

    public static void write(Journal journal, TakeFilter filter, Path file, ExportSteps steps) {
        Map<String, Map<Long, Double>> readings = new HashMap<>();
        for (Reading reading : Reading.ALL) {
            steps.next(readings.size(), Reading.ALL.size());
            readings.put(reading.name(), journal.points(reading.name(), filter).stream().collect(Collectors.toMap(ReadingPoint::takeId, ReadingPoint::value)));
        }
        try (Writer out = Files.newBufferedWriter(file)) {
            List<String> head = new ArrayList<>(WORDS);
            Reading.ALL.forEach(reading -> head.add(reading.name()));
            line(out, head);
            for (TakeLine take : journal.list(filter)) {
                line(out, fields(take, readings));
            }
        } catch (IOException problem) {
            throw JournalProblem.unwritten("journal export", file, problem);
        }
    }

    private static List<String> fields(TakeLine take, Map<String, Map<Long, Double>> readings) {
        List<String> fields = new ArrayList<>(List.of(String.valueOf(take.id()), take.keptAt().toString(), take.name(),
            String.valueOf(take.durationSeconds()), take.instrument(), take.rigName(), take.venue(), take.note(),
            String.join(" ", take.tags()), String.join(" ", take.faults())));
        for (Reading reading : Reading.ALL) {
            Double value = readings.get(reading.name()).get(take.id());
            fields.add(value == null ? "" : value.toString());
        }
        return fields;
    }

    private static void line(Writer out, List<String> fields) throws IOException {
        out.write(fields.stream().map(JournalTable::quoted).collect(Collectors.joining(",")));
        out.write("\r\n");
    }

    private static String quoted(String field) {
        return field.matches("(?s).*[\",\r\n].*") ? '"' + field.replace("\"", "\"\"") + '"' : field;
    }
}
