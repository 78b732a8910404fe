package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenwood.Needs;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundFile;
import evenwood.sound.SoundFiles;
import evenwood.sound.WavWriter;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
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
        assertThat(list.at("/takes/0/findings").toString()).contains("{\"fault\":\"hum\",\"severity\":\"strong\"}");
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
    void aFlacFileIsKeptAsItIs() throws IOException, InterruptedException {
        Needs.program("flac");
        Path flac = folder.resolve("tone.flac");
        assertThat(new ProcessBuilder("flac", "-s", "-o", flac.toString(), tone(WavWriter.Coding.INTEGER_16).toString()).start().waitFor()).isZero();
        assertThat(keepSound(flac)).startsWith("Kept as take 1");
        assertThat(journal("list").out()).contains("(with sound)");
        assertThat(Files.readAllBytes(soundOf(1))).isEqualTo(Files.readAllBytes(flac));
    }

    @Test
    void anyOtherFileIsKeptAsFlac() {
        Path wav = tone(WavWriter.Coding.INTEGER_24);
        assertThat(keepSound(wav)).startsWith("Kept as take 1").hasLineCount(1);
        assertThat(samples(soundOf(1))).isEqualTo(samples(wav));
        assertThat(keepSound(tone(WavWriter.Coding.FLOAT_32))).startsWith("The sound is kept in 24 bits: ").contains(" samples were rounded to that", "Kept as take 2");
    }

    @Test
    void aTakeWhoseSoundCannotBeKeptIsKeptWithoutIt() throws IOException {
        Path wav = Files.write(folder.resolve("ten.wav"), tenChannels());
        Spoken check = Spoken.by("check", wav.toString(), "--keep-sound", "--journal", file.toString());
        assertThat(check.err()).contains("has 10 channels and FLAC holds 8", "; the take is kept without it", "Kept as take 1");
        assertThat(check.exitCode()).isEqualTo(3);
        assertThat(journal("show", "1", "--sound", "x.flac").err()).contains("no sound was kept with take 1");
        assertThat(Spoken.by("check", "--demo", "--keep-sound").err()).startsWith("check: --keep-sound is for a recording");
    }

    private String keepSound(Path take) {
        return Spoken.by("check", take.toString(), "--keep-sound", "--journal", file.toString()).err();
    }

    private Path soundOf(int take) {
        Path back = folder.resolve("back.flac");
        assertThat(journal("show", "" + take, "--sound", back.toString()).exitCode()).isZero();
        return back;
    }

    private Path tone(WavWriter.Coding coding) {
        Path wav = folder.resolve("tone.wav");
        float[] samples = new float[48_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (0.3 * Math.sin(0.0576 * i));
        }
        try (WavWriter writer = WavWriter.create(wav, 48_000, coding)) {
            writer.write(samples, samples.length);
        }
        return wav;
    }

    private static float[] samples(Path sound) {
        try (SoundFile source = SoundFiles.open(sound, 1)) {
            AudioBlock block = new AudioBlock(100_000);
            return Arrays.copyOf(block.samples(), source.read(block));
        }
    }

    private static byte[] tenChannels() {
        int frames = 48_000;
        ByteBuffer wav = ByteBuffer.allocate(44 + 20 * frames).order(ByteOrder.LITTLE_ENDIAN);
        wav.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 20 * frames).put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII)).putInt(16)
            .putShort((short) 1).putShort((short) 10).putInt(48_000).putInt(960_000).putShort((short) 20).putShort((short) 16)
            .put("data".getBytes(StandardCharsets.US_ASCII)).putInt(20 * frames);
        for (int i = 0; i < 10 * frames; i++) {
            wav.putShort((short) (5000 * Math.sin(0.0576 * (i / 10))));
        }
        return wav.array();
    }
}
