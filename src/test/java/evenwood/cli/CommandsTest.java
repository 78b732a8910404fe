package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CommandsTest {
    private static final int RATE_HZ = PluckedTake.RATE_HZ;

    @TempDir
    Path folder;

    @Test
    void theDemoTakeHasSomethingToSay() throws IOException {
        Spoken spoken = Spoken.by("check", "--demo", "--json");
        JsonNode object = new ObjectMapper().readTree(spoken.out());
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/check.schema.json"))).validate(object)).isEmpty();
        assertThat(spoken.err()).isEmpty();
        assertThat(object.at("/findings").findValuesAsText("fault")).contains("hum");
        assertThat(object.at("/tone/instrument").textValue()).isEqualTo("octave-mandolin");
        assertThat(spoken.exitCode()).isEqualTo(1);
    }

    @Test
    void aCleanTakeEndsWithNought() throws IOException {
        Spoken spoken = Spoken.by("check", plucked(0.3).toString());
        assertThat(spoken.out()).contains("Nothing wrong was found");
        assertThat(spoken.exitCode()).isZero();
    }

    @Test
    void aTakeIsLikeItself() throws IOException {
        String file = plucked(0.3).toString();
        JsonNode object = new ObjectMapper().readTree(Spoken.by("check", file, "--like", file, "--json").out());
        assertThat(object.at("/tone/target").textValue()).isEqualTo(file);
        assertThat(object.at("/tone/bands").findValues("differenceDb")).anySatisfy(db -> assertThat(db.isNumber()).isTrue())
            .allSatisfy(db -> assertThat(db.doubleValue()).isBetween(-0.001, 0.001));
        assertThat(object.at("/findings").findValuesAsText("fault")).doesNotContain("boomy", "boxy", "nasal", "harsh", "thin", "dull");
    }

    @Test
    void aTakeIsComparedWithTheOneBefore() throws IOException {
        String quiet = Files.move(plucked(0.003), folder.resolve("quiet.wav")).toString();
        JsonNode object = new ObjectMapper().readTree(Spoken.by("check", plucked(0.3).toString(), "--after", quiet, "--json").out());
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/check.schema.json"))).validate(object)).isEmpty();
        assertThat(object.at("/comparison/before").textValue()).isEqualTo(quiet);
        assertThat(object.at("/comparison/faults/0/fault").textValue()).isEqualTo("too-quiet");
        assertThat(object.at("/comparison/faults/0/change").textValue()).isEqualTo("better");
        assertThat(object.at("/comparison/faults/0/changeDb").doubleValue()).isBetween(-40.5, -39.5);
        assertThat(Spoken.by("check", plucked(0.3).toString(), "--after", quiet).out()).contains("Against " + quiet).contains("too-quiet").contains("better");
    }

    @Test
    void humIsComparedWithoutPlaying() throws IOException {
        Path old = folder.resolve("hum.wav");
        Path now = folder.resolve("less.wav");
        SplittableRandom random = new SplittableRandom(4);
        PluckedTake.write(old, 10 * RATE_HZ, i -> 0.02 * Math.sin(2 * Math.PI * 50.01 * i / RATE_HZ) + 1e-4 * (random.nextDouble() - 0.5));
        PluckedTake.write(now, 10 * RATE_HZ, i -> 0.002 * Math.sin(2 * Math.PI * 50.01 * i / RATE_HZ) + 1e-4 * (random.nextDouble() - 0.5));
        Spoken spoken = Spoken.by("check", now.toString(), "--after", old.toString(), "--json");
        assertThat(spoken.err()).isEmpty();
        JsonNode hum = new ObjectMapper().readTree(spoken.out()).at("/comparison/faults/0");
        assertThat(hum.get("fault").textValue()).isEqualTo("hum");
        assertThat(hum.get("change").textValue()).isEqualTo("better");
        assertThat(hum.get("changeDb").doubleValue()).isBetween(-20.2, -19.8);
    }

    @Test
    void whatWasTurnedIsToldAndLearned() throws IOException {
        Path old = Files.move(plucked(0.3), folder.resolve("old.wav"));
        Path now = plucked(0.3);
        evenwood.eq.EqChain bass = evenwood.eq.EqChain.of(evenwood.eq.EqFilter.lowShelf(300, 0.7, -10));
        try (evenwood.sound.SoundSource source = evenwood.sound.SoundFiles.open(old, 0);
                evenwood.sound.WavWriter writer = evenwood.sound.WavWriter.create(now, RATE_HZ, evenwood.sound.WavWriter.Coding.INTEGER_24)) {
            evenwood.eq.Rendering.write(source, bass, 0, writer);
        }
        Path rig = Files.writeString(folder.resolve("rig.yaml"), """
            name: Kitchen amp
            instrument: steel-string-guitar
            tap: amp-line-out
            controls: amp-bass-mid-treble
            """);
        Path moves = Files.writeString(folder.resolve("moves.json"), """
            [{"control": "Bass", "kind": "low-shelf", "frequencyHz": 120, "fromDb": 0, "toDb": -7.2, "from": "5", "to": "2"}]
            """);
        JsonNode answer = new ObjectMapper().readTree(Spoken.by("check", now.toString(), "--after", old.toString(), "--rig", rig.toString(),
            "--moves", moves.toString(), "--json").out()).at("/comparison/moves/0");
        assertThat(answer.get("control").textValue()).isEqualTo("Bass");
        assertThat(answer.get("meantDb").doubleValue()).isBetween(-3.0, -1.0);
        assertThat(answer.get("answeredDb").doubleValue()).isLessThan(-5);
        assertThat(folder.resolve("rig.learned.yaml")).content().contains("control: \"Bass\"").contains("how: takes").contains("answers:");
    }

    @Test
    void aSilentTakeCannotBeATarget() throws IOException {
        Path silent = folder.resolve("silent.wav");
        PluckedTake.write(silent, 3 * RATE_HZ, i -> 0);
        Spoken spoken = Spoken.by("check", plucked(0.3).toString(), "--like", silent.toString());
        assertThat(spoken.err()).startsWith("check --like: no playing was heard in " + silent);
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @Test
    void aTakeThatNeedsMoreGainIsToldHowMuch() throws IOException {
        Spoken spoken = Spoken.by("check", plucked(0.003).toString());
        assertThat(spoken.out()).contains("too-quiet").contains("dB up");
    }

    @Test
    void aRigsOwnGainIsTurnedInItsOwnMarking() throws IOException {
        Path rig = Files.writeString(folder.resolve("rig.yaml"), """
            name: Kitchen amp
            instrument: steel-string-guitar
            tap: amp-line-out
            controls: amp-bass-mid-treble
            positions: { Gain: 3, Volume: 6 }
            """);
        Spoken spoken = Spoken.by("check", plucked(0.03).toString(), "--rig", rig.toString());
        assertThat(spoken.out()).contains("Gain: from 3 to ");
        Spoken wrong = Spoken.by("check", plucked(0.03).toString(), "--rig", folder.resolve("no.yaml").toString());
        assertThat(wrong.err()).startsWith("rig: ").contains("does not exist");
        assertThat(wrong.exitCode()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"--help", "check --help", "listen --help", "presets --help", "--version"})
    void helpIsGivenFreely(String words) {
        Spoken spoken = Spoken.by(words.split(" "));
        assertThat(spoken.exitCode()).isZero();
        assertThat(spoken.out()).contains("evenwood");
        assertThat(spoken.out()).doesNotContain("\u001b");
    }

    @Test
    void presetsAreListedByKind() throws IOException {
        JsonNode object = new ObjectMapper().readTree(Spoken.by("presets", "list", "--json").out());
        assertThat(object.at("/instruments").size()).isGreaterThanOrEqualTo(18);
        assertThat(Spoken.by("presets", "list").out()).contains("  octave-mandolin");
        assertThat(Spoken.by("presets", "verify").out()).contains("in order");
    }

    @Test
    void everyPresetIsShownWithItsFileAndForPrograms() throws IOException {
        JsonNode all = new ObjectMapper().readTree(Spoken.by("presets", "list", "--json").out());
        int shown = 0;
        for (JsonNode kind : all) {
            for (JsonNode id : kind) {
                JsonNode preset = new ObjectMapper().readTree(Spoken.by("presets", "show", id.asText(), "--json").out());
                assertThat(preset.at("/preset/id").asText()).isEqualTo(id.asText());
                shown++;
            }
        }
        assertThat(shown).isGreaterThan(50);
        assertThat(Spoken.by("presets", "show", "ukulele").out()).contains("# presets/instruments/ukulele.yaml").contains("lowestHz:");
    }

    @Test
    void aTerminalWithoutOurCharactersGetsPlainOnes() {
        Terminal ascii = new Terminal(System.out, System.err, false, java.nio.charset.StandardCharsets.US_ASCII);
        assertThat(ascii.showable("−3 dB → 4½ … ±1 A–B ♭")).isEqualTo("-3 dB -> 4.5 ... +-1 A-B ?");
    }

    private Path plucked(double amplitude) {
        return PluckedTake.written(folder.resolve("take.wav"), amplitude);
    }
}
