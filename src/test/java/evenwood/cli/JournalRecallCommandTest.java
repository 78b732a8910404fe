package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalRecallCommandTest {
    private static final String RIG = """
        name: My amp
        instrument: octave-mandolin
        tap: amp-line-out
        controls: amp-bass-mid-treble
        positions: { Bass: %s }
        """;

    @TempDir
    Path folder;

    @Test
    void aKeptNightIsSetAgain() throws IOException {
        Path that = Files.writeString(folder.resolve("that.yaml"), RIG.formatted(3));
        Path now = Files.writeString(folder.resolve("now.yaml"), RIG.formatted(6));
        Path other = Files.writeString(folder.resolve("other.yaml"), RIG.formatted(6).replace("amp-bass-mid-treble", "channel-strip").replaceAll("positions.*", ""));
        String journal = folder.resolve("journal.db").toString();
        try (Journal kept = Journal.open(Path.of(journal))) {
            Rig rig = Rig.read(that, new Presets(Path.of("none")));
            kept.keepNow(new TakeToKeep(KeptExamples.EVENING, KeptExamples.assessment(new ReadingsSketch()), Optional.of(rig), TakeWords.NONE));
            kept.keepNow(KeptExamples.sketch(KeptExamples.EVENING, TakeWords.NONE));
        }
        Spoken list = Spoken.by("journal", "recall", "1", "--rig", now.toString(), "--journal", journal);
        assertThat(list.out()).contains("[ ] Bass           from 6 to 3", "[x] Treble         stays at 5", "evenwood check TAKE --rig FILE --like 1");
        JsonNode json = new ObjectMapper().readTree(Spoken.by("journal", "recall", "1", "--rig", other.toString(), "--json", "--journal", journal).out());
        assertThat(json.get("translated").asBoolean()).isTrue();
        assertThat(json.get("steps").get(0).get("control").asText()).isEqualTo("Trim");
        assertThat(json.get("steps").get(0).get("to").isNull()).isTrue();
        assertThat(Spoken.by("journal", "recall", "1", "--journal", journal).out()).contains("[ ] Bass           3");
        assertThat(Spoken.by("journal", "recall", "2", "--journal", journal).err()).startsWith("journal recall: take 2 was kept without a rig,").contains("--like 2");
    }
}
