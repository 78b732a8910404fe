package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.KeptExamples;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalTrendCommandTest {
    @TempDir
    Path folder;
    private String file;

    /** Thirty takes whose playing falls by 6 dB in the last third, since a battery was put in. */
    @BeforeEach
    void aMonthOfTakes() {
        file = folder.resolve("journal.db").toString();
        SplittableRandom random = new SplittableRandom(1);
        try (Journal journal = Journal.open(Path.of(file))) {
            for (int day = 0; day < 40; day++) {
                ReadingsSketch sketch = new ReadingsSketch().playing(50, -24 - Math.max(0, day - 20) * 0.4 + random.nextGaussian()).noise(-80, -90, -90, -82);
                journal.keepNow(new TakeToKeep(KeptExamples.EVENING.plusDays(day), KeptExamples.assessment(sketch), Optional.empty(),
                    new TakeWords("oud", "", "", List.of())));
            }
            journal.addNow(new Event("e", KeptExamples.EVENING.minusDays(1), EventKind.NEW_BATTERY, "oud", ""));
        }
    }

    @Test
    void aTrendIsToldInWordsAndNumbers() throws IOException {
        Spoken trend = Spoken.by("journal", "trend", "playingDbfs", "--journal", file);
        assertThat(trend.err()).isEmpty();
        assertThat(trend.out()).startsWith("playingDbfs  −").contains("40 takes from 2026-03-14 to 2026-04-22", "it went down", "% sure)");
        JsonNode json = new ObjectMapper().readTree(Spoken.by("journal", "trend", "playingDbfs", "--json", "--journal", file).out());
        assertThat(json.get("points")).hasSize(40);
        assertThat(json.get("changes").get(0).get("change").asDouble()).isNegative();
        assertThat(json.get("changes").get(0).get("confidence").asDouble()).isEqualTo(0.98);
    }

    @Test
    void aBatteryIsSuspected() {
        assertThat(Spoken.by("journal", "trend", "--instrument", "oud", "--journal", file).out()).startsWith("Output: since the last change on 2026-03-13 it has fallen by ")
            .contains("as it does when a battery goes flat");
        assertThat(Spoken.by("journal", "trend", "--instrument", "violin", "--journal", file).out())
            .isEqualToNormalizingNewlines("Strings, battery and channel: nothing but chance in the kept takes\n");
        assertThat(Spoken.by("journal", "trend", "loudness", "--journal", file).err()).startsWith("journal trend: loudness, but one of these is needed: truePeakDbtp,");
    }

    @Test
    void twoTakesAreComparedByTheirUsualScatter() throws IOException {
        Spoken words = Spoken.by("journal", "compare", "1", "40", "--journal", file);
        assertThat(words.err()).isEmpty();
        assertThat(words.out().lines().filter(line -> line.startsWith("playingDbfs")).findFirst()).hasValueSatisfying(line -> assertThat(line).endsWith("a real change"));
        assertThat(words.out().lines().filter(line -> line.startsWith("hissDbfs")).findFirst()).hasValueSatisfying(line -> assertThat(line).doesNotContain("real"));
        JsonNode json = new ObjectMapper().readTree(Spoken.by("journal", "compare", "1", "2", "--json", "--journal", file).out());
        for (JsonNode reading : json.get("readings")) {
            assertThat(reading.get("real").asBoolean()).as(reading.toString()).isFalse();
        }
    }
}
