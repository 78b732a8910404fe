package evenwood.journal;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletableFuture;

/**
 * The whole journal, or one take, as a JSON file that another journal can take in.
 *
 * <p>How: {@code {"schema": "evenwood.journal/1", "takes": […], "events": […], "practice": […]}}, each entry as
 * {@link RecordWriter} writes it. What comes in has the same readings bit for bit (JournalExportTest); what is there already,
 * told by its uid, stays as it is.
 */
public final class JournalExport {
    public static final String SCHEMA = "evenwood.journal/1";
    private static final int LONGEST_TEXT = 1_500_000_000;
    private static final JsonFactory FACTORY = JsonFactory.builder()
        .streamReadConstraints(StreamReadConstraints.builder().maxStringLength(LONGEST_TEXT).build()).build();

    private JournalExport() { }

    /** @param withSound whether kept sound goes along; it makes the file large */
    public static void write(Journal journal, TakeFilter filter, boolean withSound, Path file) {
        write(journal, filter, withSound, file, ExportSteps.ALL);
    }

    public static void write(Journal journal, TakeFilter filter, boolean withSound, Path file, ExportSteps steps) {
        try (JsonGenerator json = begin(file)) {
            List<TakeLine> lines = oldestFirst(journal.list(filter));
            for (int i = 0; i < lines.size(); i++) {
                steps.next(i, lines.size());
                TakeToKeep take = journal.takeToKeep(lines.get(i).id());
                new RecordWriter(json).write(withSound ? take : take.withoutSound());
            }
            json.writeEndArray();
            json.writeArrayFieldStart("events");
            for (Event event : journal.events()) {
                new RecordWriter(json).write(event);
            }
            json.writeEndArray();
            json.writeArrayFieldStart("practice");
            for (Practice practice : journal.practice()) {
                new RecordWriter(json).write(practice);
            }
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException problem) {
            throw notWritten(file, problem);
        }
    }

    /** One take by itself, such as one that found no room in the journal. */
    public static void write(TakeToKeep take, Path file) {
        try (JsonGenerator json = begin(file)) {
            new RecordWriter(json).write(take);
            json.writeEndArray();
            json.writeEndObject();
        } catch (IOException problem) {
            throw notWritten(file, problem);
        }
    }

    private static JsonGenerator begin(Path file) throws IOException {
        JsonGenerator json = FACTORY.createGenerator(Files.newOutputStream(file));
        json.writeStartObject();
        json.writeStringField("schema", SCHEMA);
        json.writeArrayFieldStart("takes");
        return json;
    }

    private static List<TakeLine> oldestFirst(List<TakeLine> lines) {
        List<TakeLine> turned = new java.util.ArrayList<>(lines);
        java.util.Collections.reverse(turned);
        return turned;
    }

    /** Takes in everything of a file. @return how many takes were new */
    public static int read(Path file, Journal journal) {
        int before = journal.list(TakeFilter.ALL).size();
        try (JsonParser json = FACTORY.createParser(Files.newInputStream(file))) {
            if (json.nextToken() != JsonToken.START_OBJECT) {
                throw new IOException("it does not begin with {");
            }
            while (json.nextToken() == JsonToken.FIELD_NAME) {
                field(json, json.currentName(), journal);
            }
        } catch (NoSuchFileException missing) {
            throw new JournalProblem("journal import: " + file + " does not exist; check the spelling", missing)
                .of(JournalTrouble.NOT_THERE, file.toString());
        } catch (JsonProcessingException problem) {
            throw wrong(file, problem.getOriginalMessage().lines().findFirst().orElse(""), problem);
        } catch (IOException | IllegalArgumentException problem) {
            throw wrong(file, String.valueOf(problem.getMessage()).lines().findFirst().orElse(""), problem);
        }
        return journal.list(TakeFilter.ALL).size() - before;
    }

    private static void field(JsonParser json, String name, Journal journal) throws IOException {
        json.nextToken();
        if (name.equals("schema") && !json.getText().equals(SCHEMA)) {
            throw new IOException("its schema is " + json.getText() + ", but " + SCHEMA + " is understood");
        }
        if (Set.of("takes", "events", "practice").contains(name) && json.currentToken() == JsonToken.START_ARRAY) {
            CompletableFuture<?> last = CompletableFuture.completedFuture(null);
            while (json.nextToken() == JsonToken.START_OBJECT) {
                Store.result(last); // one entry is written while the next is read, and no more wait in memory
                last = switch (name) {
                    case "takes" -> journal.keep(new RecordReader(json).read(TakeToKeep.class));
                    case "events" -> journal.add(new RecordReader(json).read(Event.class));
                    default -> journal.add(new RecordReader(json).read(Practice.class));
                };
            }
            Store.result(last);
        } else {
            json.skipChildren();
        }
    }

    private static JournalProblem wrong(Path file, String why, Exception problem) {
        return new JournalProblem("journal import: " + file + " is no whole journal (" + why + "); what could be read before was taken in;"
            + " use what evenwood journal export writes", problem).of(JournalTrouble.NOT_WHOLE, file.toString());
    }

    private static JournalProblem notWritten(Path file, IOException problem) {
        return JournalProblem.unwritten("journal export", file, problem);
    }
}
