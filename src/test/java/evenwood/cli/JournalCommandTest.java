package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.Needs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class JournalCommandTest {
    @TempDir
    Path folder;
    private Path file;

    @BeforeEach
    void aFreshJournal() {
        file = folder.resolve("journal.db");
    }

    @Test
    void aTakeIsKeptFoundShownAndAnnotated() throws IOException {
        Spoken check = Spoken.by("check", "--demo", "--instrument", "octave-mandolin", "--keep", "--venue", "The Harp", "--tag", "Live", "--journal", file.toString());
        assertThat(check.err()).isEqualTo("Kept as take 1 in " + file + System.lineSeparator());
        assertThat(check.exitCode()).isEqualTo(1);
        assertThat(journal("list").out()).contains("    1  ", "octave-mandolin", "hum!!!", "@ The Harp", "#live");
        assertThat(journal("list", "--search", "violin").err()).isEqualTo("journal: nothing is kept that fits" + System.lineSeparator());
        Spoken show = journal("show", "1");
        assertThat(show.out()).startsWith("Take 1, ").contains("The Harp", "Instrument  octave-mandolin").endsWith(check.out());
        assertThat(journal("note", "1", "windy", "evening", "--untag", "live", "--tag", "duo").out()).contains("“windy evening”", "#duo").doesNotContain("#live");
        JsonNode shown = new ObjectMapper().readTree(journal("show", "1", "--json").out());
        assertThat(shown.get("check").get("schema").asText()).isEqualTo("evenwood.check/1");
        assertThat(shown.get("note").asText()).isEqualTo("windy evening");
        JsonNode list = new ObjectMapper().readTree(journal("list", "--json").out());
        assertThat(list.get("takes").get(0).get("findings").toString()).contains("hum:strong");
        likeAKeptTake();
        exportAndImport();
        backupAndRestore();
    }

    private void likeAKeptTake() {
        Spoken like = Spoken.by("check", "--demo", "--like", "1", "--journal", file.toString());
        assertThat(like.err()).isEmpty();
        assertThat(like.out()).as("the same take is like itself").doesNotContain("boomy", "dull", "thin", "harsh");
        assertThat(Spoken.by("check", "--demo", "--like", "7", "--journal", file.toString()).err())
            .isEqualTo("journal: there is no take 7; see evenwood journal list" + System.lineSeparator());
    }

    private void exportAndImport() throws IOException {
        Path json = folder.resolve("all.json");
        Path csv = folder.resolve("all.csv");
        assertThat(journal("export", json.toString()).exitCode()).isZero();
        assertThat(journal("export", csv.toString()).exitCode()).isZero();
        assertThat(Files.readString(csv)).contains("The Harp");
        assertThat(journal("export", "all.txt").err()).isEqualTo("journal export: all.txt, but a name ending in .json or .csv is needed" + System.lineSeparator());
        assertThat(Spoken.by("journal", "import", json.toString(), "--journal", folder.resolve("other.db").toString()).out()).startsWith("1 take was new.");
    }

    private void backupAndRestore() {
        Path copy = folder.resolve("copy.db");
        assertThat(journal("backup", copy.toString()).exitCode()).isZero();
        journal("note", "1", "spoilt");
        assertThat(journal("restore", copy.toString()).out()).contains("The journal is as in", "What was there before lies in");
        assertThat(journal("list").out()).contains("windy evening").doesNotContain("spoilt");
        assertThat(journal("backup", folder.resolve("saved.db").toString(), "--salvage").out()).startsWith("1 takes were saved");
    }

    @Test
    void eventsAreMarkedAndListed() {
        journal("event", "new-battery", "--at", "2026-03-01");
        Spoken listed = journal("event", "new-strings", "--at", "2026-02-01", "--instrument", "oud", "--note", "light");
        assertThat(listed.out()).isEqualToNormalizingNewlines("2026-02-01  new strings on oud (light)\n2026-03-01  new battery\n");
        assertThat(journal("event", "new-hat").err()).startsWith("journal event: new-hat, but one of these is needed: new-strings, new-battery,");
        assertThat(journal("event", "other", "--at", "yesterday").err())
            .startsWith("journal event: yesterday, but a day such as 2026-03-14 or a time such as 2026-03-14T20:15 is needed");
    }

    @Test
    void everyTroubleIsOneLine() throws IOException {
        assertThat(journal().err()).isEqualTo("journal: say what to do, such as list, show or trend; see evenwood journal --help" + System.lineSeparator());
        assertThat(journal("list").err()).isEqualTo("journal: nothing is kept yet; evenwood check TAKE --keep does" + System.lineSeparator());
        assertThat(journal("show", "3").exitCode()).isEqualTo(2);
        Path text = Files.writeString(folder.resolve("text"), "words, words, words. ".repeat(100));
        Spoken kept = Spoken.by("check", "--demo", "--keep", "--journal", text.toString());
        assertThat(kept.exitCode()).isEqualTo(3);
        assertThat(kept.out()).as("the result is told all the same").contains("Turn");
        assertThat(kept.err().lines()).hasSize(1);
        String aside = kept.err().replaceAll("(?s).*laid aside as (\\S+): .*", "$1");
        assertThat(Spoken.by("journal", "import", aside, "--journal", file.toString()).out()).startsWith("1 take was new.");
        Files.delete(Path.of(aside));
    }

    private Spoken journal(String... words) {
        List<String> all = new ArrayList<>(List.of("journal"));
        all.addAll(List.of(words));
        if (words.length > 0) {
            all.addAll(List.of("--journal", file.toString()));
        }
        return Spoken.by(all.toArray(new String[0]));
    }

    @Test
    void soundIsKeptAsTheFlacFileItIs() throws IOException, InterruptedException {
        Needs.program("sox");
        Path flac = folder.resolve("tone.flac");
        assertThat(new ProcessBuilder("sox", "-n", "-r", "48000", "-b", "16", flac.toString(), "synth", "1", "sine", "440", "vol", "0.3").start().waitFor()).isZero();
        assertThat(Spoken.by("check", flac.toString(), "--keep-sound", "--journal", file.toString()).err()).startsWith("Kept as take 1");
        assertThat(journal("list").out()).contains("(with sound)");
        Path back = folder.resolve("back.flac");
        assertThat(journal("show", "1", "--sound", back.toString()).exitCode()).isZero();
        assertThat(Files.readAllBytes(back)).isEqualTo(Files.readAllBytes(flac));
        Path wav = folder.resolve("tone.wav");
        assertThat(new ProcessBuilder("sox", flac.toString(), wav.toString()).start().waitFor()).isZero();
        assertThat(Spoken.by("check", wav.toString(), "--keep-sound", "--journal", file.toString()).err()).contains("is no FLAC file; make one of it (flac FILE)");
        assertThat(Spoken.by("journal", "show", "2", "--sound", "x.flac", "--journal", file.toString()).err()).contains("no sound was kept with take 2");
    }
}
