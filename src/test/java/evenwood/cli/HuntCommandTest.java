package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenwood.takes.Faults;
import evenwood.takes.Mains;
import evenwood.takes.TakeFile;
import evenwood.takes.Tones;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole hunts in recordings of noise as it is and as trials change it. */
class HuntCommandTest {
    private static final int RATE_HZ = 48_000;
    private static final int SECONDS = 3;
    private static final ObjectMapper JSON = new ObjectMapper();

    /** At 0 dBFS by seed; a series takes a while to compute. */
    private static final Map<Long, float[]> HUM = new HashMap<>();

    @TempDir
    Path folder;

    @Test
    void aGroundLoopIsFoundByLiftingTheDi() throws IOException {
        String before = mains("before", -50, 1);
        String touched = mains("touched", -50, 2);
        String lifted = mains("lifted", -75, 3);
        JsonNode hunt = JSON.readTree(Spoken.by("hunt", "--json", "--from", before, "touch-strings=" + touched, "ground-lift=" + lifted, "other-cable=" + mains("cable", -50, 4)).out());
        assertThat(hunt.at("/ranking/0/cause").asText()).isEqualTo("ground-loop");
        assertThat(hunt.at("/trials/0/outcome").asText()).isEqualTo("same");
        assertThat(hunt.at("/trials/1/outcome").asText()).isEqualTo("gone");
        assertThat(hunt.at("/trials/1/changeDb").asDouble()).isCloseTo(-25, within(2.0));
        assertThat(hunt.at("/cure").asText()).contains("ground lift", "every mains earth");
        assertThat(schema(hunt)).isEmpty();
    }

    @Test
    void aPhoneIsFoundByItsTones() throws IOException {
        float[] room = hiss(-92, 5);
        String before = wav("phone", Faults.phone(room, RATE_HZ, -38, 1).samples());
        String quiet = wav("quiet", hiss(-92, 6));
        JsonNode hunt = JSON.readTree(Spoken.by("hunt", "--json", "--from", before, "flight-mode=" + quiet).out());
        assertThat(hunt.at("/ranking/0/cause").asText()).isEqualTo("mobile");
        assertThat(schema(hunt)).isEmpty();
    }

    @Test
    void wordsTellWhatWasMeasuredWhatItMeansAndWhatToDoNext() throws IOException {
        Spoken spoken = Spoken.by("hunt", "--from", mains("before", -50, 1), "touch-strings=" + mains("touched", -63, 2));
        assertThat(spoken.exitCode()).isZero();
        assertThat(spoken.err()).isEmpty();
        assertThat(spoken.out()).contains("The noise while nobody plays", "would be noticed, hunted", "Lay a hand on the strings", "before", "after",
            "Likeliest so far", "screen", "Next (");
        assertThat(spoken.out().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(100));
    }

    @Test
    void aLaterBeforeIsWhatTheTrialsBehindItAreComparedTo() throws IOException {
        JsonNode hunt = JSON.readTree(Spoken.by("hunt", "--json", "--from", mains("one", -50, 1), "before=" + mains("two", -56, 2), "other-cable=" + mains("three", -56, 3)).out());
        assertThat(hunt.at("/trials/0/changeDb").asDouble()).isCloseTo(0, within(1.0));
    }

    @Test
    void aQuietRigIsNothingToHunt() throws IOException {
        JsonNode hunt = JSON.readTree(Spoken.by("hunt", "--json", "--from", wav("quiet", hiss(-90, 3))).out());
        assertThat(hunt.at("/standing").asText()).isEqualTo("quiet");
        assertThat(hunt.at("/next").isNull()).isTrue();
        assertThat(schema(hunt)).isEmpty();
    }

    @Test
    void whatTheRigMakesImpossibleIsNotOffered() throws IOException {
        JsonNode hunt = JSON.readTree(Spoken.by("hunt", "--json", "--rig", "src/test/resources/rigs/home.yaml", "--from", mains("before", -50, 1)).out());
        assertThat(hunt.at("/notOffered").toString()).contains("ground-lift", "unplug-charger", "volume-down", "box-on-battery").doesNotContain("touch-strings");
        assertThat(hunt.at("/rig").asText()).isEqualTo("Guitar in the kitchen");
        assertThat(schema(hunt)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"lift-the-earth", "mains earth taped over", "cheater-plug"})
    void aMainsEarthIsNeverLiftedAndThePlayerIsToldWhy(String trial) throws IOException {
        Spoken spoken = Spoken.by("hunt", "--from", mains("before", -50, 1), trial + "=" + mains("after", -80, 2));
        assertThat(spoken.exitCode()).isEqualTo(2);
        assertThat(spoken.out()).isEmpty();
        assertThat(spoken.err()).contains("a mains earth is never lifted", "it may kill you", "ground lift of a DI");
    }

    @Test
    void mistakesAreOneLine() throws IOException {
        String before = mains("before", -50, 1);
        assertThat(Spoken.by("hunt", "--from", before, "shout=" + before).err()).startsWith("hunt: shout is no trial; there are touch-strings, ").hasLineCount(1);
        assertThat(Spoken.by("hunt", "--from", before, before).err()).contains("a trial's name and = are needed");
        assertThat(Spoken.by("hunt", "--part", "rumble", "--from", before).err()).isEqualTo("hunt: --part rumble, but hum, buzz, hiss or tone is needed" + System.lineSeparator());
        assertThat(Spoken.by("hunt", "--from", wav("short", new float[RATE_HZ])).err()).contains("1.0 s of noise, but at least 2 s are needed");
        assertThat(Spoken.by("hunt", "--seconds", "0", "--from", before).exitCode()).isEqualTo(2);
    }

    private static Iterable<?> schema(JsonNode hunt) throws IOException {
        return JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012).getSchema(Files.readString(Path.of("docs/hunt.schema.json"))).validate(hunt);
    }

    private String mains(String name, double levelDbfs, long seed) {
        float[] hum = HUM.computeIfAbsent(seed, each -> Faults.mains(new float[SECONDS * RATE_HZ], RATE_HZ, Mains.Origin.GROUND_LOOP, 50.01, 0.005, 0, each).samples());
        float[] samples = hiss(-88, seed);
        for (int i = 0; i < samples.length; i++) {
            samples[i] += (float) (hum[i] * Math.pow(10, levelDbfs / 20));
        }
        return wav(name, samples);
    }

    private static float[] hiss(double levelDbfs, long seed) {
        return Faults.hiss(new float[SECONDS * RATE_HZ], RATE_HZ, levelDbfs, 0.2, seed).samples();
    }

    private String wav(String name, float[] samples) {
        return TakeFile.writePcm(folder.resolve(name + ".wav"), samples, RATE_HZ, 24).toString();
    }
}
