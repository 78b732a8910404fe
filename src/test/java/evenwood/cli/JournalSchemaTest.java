package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.Practice;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the journal's commands print for programs is what docs/journal.schema.json promises, no field more or less. */
class JournalSchemaTest {
    private static final ObjectMapper JSON = new ObjectMapper();

    @TempDir
    Path folder;
    private Path file;

    /** A take with everything, forty whose output falls, an event, a sitting. */
    @BeforeEach
    void aJournalWithEverythingInIt() {
        file = folder.resolve("journal.db");
        SplittableRandom random = new SplittableRandom(1);
        try (Journal journal = Journal.open(file)) {
            journal.keepNow(KeptExamples.measured().withFlac(new byte[] {'f', 'L', 'a', 'C'}));
            for (int day = 0; day < 40; day++) {
                ReadingsSketch sketch = new ReadingsSketch().playing(50, -24 - Math.max(0, day - 20) * 0.4 + random.nextGaussian()).noise(-80, -90, -90, -82);
                journal.keepNow(new TakeToKeep(KeptExamples.EVENING.plusDays(day), KeptExamples.assessment(sketch), Optional.empty(), new TakeWords("oud", "", "", List.of())));
            }
            journal.addNow(new Event("e", KeptExamples.EVENING.minusDays(1), EventKind.NEW_BATTERY, "", "a good one"));
            journal.addNow(new Event("f", KeptExamples.EVENING.plusDays(20), EventKind.NEW_CABLE, "oud", ""));
            journal.addNow(Practice.of("p", KeptExamples.EVENING, "", new ReadingsSketch().readings()));
        }
    }

    @ParameterizedTest
    @ValueSource(strings = {"list", "list --search nowhere", "show 1", "show 2", "compare 1 2", "compare 2 41", "trend playingDbfs", "trend hissDbfs --instrument violin", "trend",
        "trend --instrument oud", "recall 1", "event", "practice"})
    void printedObjectsAreAsPromised(String words) throws IOException {
        List<String> command = new ArrayList<>(List.of("journal"));
        command.addAll(List.of(words.split(" ")));
        command.addAll(List.of("--json", "--journal", file.toString()));
        Spoken spoken = Spoken.by(command.toArray(String[]::new));
        assertThat(spoken.exitCode()).isZero();
        JsonNode printed = JSON.readTree(spoken.out());
        assertThat(schema("journal").validate(printed)).isEmpty();
        if (printed.has("check")) {
            assertThat(schema("check").validate(printed.get("check"))).isEmpty();
        }
    }

    @Test
    void theExportIsAsPromised() throws IOException {
        Path export = folder.resolve("all.json");
        assertThat(Spoken.by("journal", "export", export.toString(), "--sound", "--journal", file.toString()).exitCode()).isZero();
        JsonNode written = JSON.readTree(export.toFile());
        assertThat(schema("journal").validate(written)).isEmpty();
        assertThat(written.at("/takes/0/flac").asText()).isEqualTo("ZkxhQw==");
    }

    @Test
    void suspicionsAndChangesAreAmongWhatIsHeldAgainstIt() throws IOException {
        assertThat(JSON.readTree(Spoken.by("journal", "trend", "--instrument", "oud", "--json", "--journal", file.toString()).out()).at("/suspicions")).isNotEmpty();
        assertThat(JSON.readTree(Spoken.by("journal", "trend", "playingDbfs", "--json", "--journal", file.toString()).out()).at("/changes")).isNotEmpty();
    }

    @Test
    void theSchemaRefusesAStrangeFieldAMissingOneAndAStrangeWord() throws IOException {
        ObjectNode take = (ObjectNode) JSON.readTree(Spoken.by("journal", "list", "--json", "--journal", file.toString()).out()).at("/takes/0");
        ObjectNode list = JSON.createObjectNode().put("schema", "evenwood.journal-list/1");
        list.putArray("takes").add(take.deepCopy().put("mood", "good"));
        assertThat(schema("journal").validate(list)).isNotEmpty();
        list.putArray("takes").add(take.deepCopy().without("venue"));
        assertThat(schema("journal").validate(list)).isNotEmpty();
        ObjectNode strange = take.deepCopy();
        strange.putArray("findings").addObject().put("fault", "muddy").put("severity", "clear");
        list.putArray("takes").add(strange);
        assertThat(schema("journal").validate(list)).isNotEmpty();
        list.putArray("takes").add(take);
        assertThat(schema("journal").validate(list)).isEmpty();
    }

    private static JsonSchema schema(String name) throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(JSON.readTree(Files.readString(Path.of("docs", name + ".schema.json"))));
    }
}
