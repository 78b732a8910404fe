package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenwood.eq.EqChain;
import evenwood.eq.EqFilter;
import evenwood.eq.EqProcessor;
import evenwood.measure.SineSweeps;
import evenwood.takes.TakeFile;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LearnCommandTest {
    private static final int RATE_HZ = 16_000;

    @TempDir
    Path folder;

    private Path rig;

    @BeforeEach
    void aRig() throws IOException {
        rig = Files.writeString(folder.resolve("rig.yaml"), """
            name: Kitchen amp
            instrument: steel-string-guitar
            tap: amp-line-out
            controls: amp-bass-mid-treble
            """);
    }

    @Test
    void theSweepsAreWrittenWithACaution() {
        Path file = folder.resolve("sweeps.wav");
        Spoken spoken = Spoken.by("learn", "Bass", "--sweep", "-o", file.toString());
        assertThat(spoken.exitCode()).isZero();
        assertThat(spoken.out()).contains("Careful").contains("headphones off").contains("evenwood learn Bass --rig FILE --sweep");
        assertThat(file).exists().satisfies(written -> assertThat(Files.size(written)).isGreaterThan((long) (3 * 48_000 * SineSweeps.wholeSeconds())));
    }

    @Test
    void recordingsOfSweepsBecomeCurvesBesideTheRig() throws IOException {
        Spoken spoken = Spoken.by("learn", "Bass", "--rig", rig.toString(), "--sweep", recording(0, -9) + "@0", recording(5, 0) + "@5", recording(10, 6) + "@10");
        assertThat(spoken.err()).isEmpty();
        assertThat(spoken.exitCode()).isZero();
        assertThat(spoken.out()).contains("against where it does least, at 5").containsPattern("at 0: −8\\.[1-5] dB").containsPattern("at 10: \\+5\\.[0-5] dB");
        assertThat(folder.resolve("rig.learned.yaml")).content().contains("control: \"Bass\"").contains("how: sweep");
    }

    @Test
    void asJsonItKeepsToItsSchemaAndNothingElseIsPrinted() throws IOException {
        Spoken spoken = Spoken.by("learn", "Bass", "--rig", rig.toString(), "--json", "--sweep", recording(5, 0) + "@5", recording(10, 6) + "@10");
        JsonNode learned = new ObjectMapper().readTree(spoken.out());
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.readString(Path.of("docs/learn.schema.json"))).validate(learned)).isEmpty();
        assertThat(learned.get("against").asText()).isEqualTo("5");
        JsonNode ten = learned.get("positions").get(1);
        assertThat(ten.get("gain").asDouble()).isEqualTo(10);
        JsonNode at63Hz = ten.get("curve").get(20);
        assertThat(at63Hz.get("frequencyHz").asDouble()).isBetween(60.0, 66.0);
        assertThat(at63Hz.get("changeDb").asDouble()).isBetween(5.0, 6.0);
        assertThat(learned.get("sweeps")).hasSize(2 * SineSweeps.COUNT);
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
        learn Bass                     | learn: name the rig that Bass is part of with --rig FILE, or write the sweeps with --sweep -o FILE
        learn Bass --rig RIG a.wav@5   | learn: Bass is needed at two positions at least, as in low.wav@0 high.wav@10
        learn Bass --rig RIG a.wav b   | learn: a.wav, but FILE@POSITION is needed, as in take.wav@5: the take and where Bass stood
        learn Boost --rig RIG          | learn: RIG has no control Boost, but Gain, Bass, Middle, Treble, Volume
        learn Bass -o x.wav            | learn: -o writes the sweeps and nothing else; say evenwood learn Bass --sweep -o x.wav
        """)
    void badUsageIsOneLine(String words, String answer) {
        Spoken spoken = Spoken.by(words.replace("RIG", rig.toString()).split(" "));
        assertThat(spoken.err().strip()).isEqualTo(answer.replace("RIG", rig.toString()));
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    @Test
    void aRecordingWithoutSweepsIsToldSo() throws IOException {
        Path silent = folder.resolve("silent.wav");
        TakeFile.writePcm(silent, new float[10 * RATE_HZ], RATE_HZ, 16);
        Spoken spoken = Spoken.by("learn", "Bass", "--rig", rig.toString(), "--sweep", silent + "@0", silent + "@5");
        assertThat(spoken.err()).startsWith("learn: no sweep was found in " + silent);
        assertThat(folder.resolve("rig.learned.yaml")).doesNotExist();
    }

    private String recording(int number, double gainDb) throws IOException {
        float[] samples = SineSweeps.samples(RATE_HZ);
        new EqProcessor(EqChain.of(EqFilter.lowShelf(150, EqFilter.BUTTERWORTH_Q, gainDb)).withGainDb(-6), RATE_HZ).process(samples, samples.length);
        Path file = folder.resolve("at-" + number + ".wav");
        TakeFile.writePcm(file, samples, RATE_HZ, 24);
        return file.toString();
    }
}
