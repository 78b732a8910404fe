package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.PeakForecast;
import evenwood.eq.RigInUse;
import evenwood.judge.TargetWindow;
import evenwood.measure.TakeReadings;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.takes.ReadingsSketch;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.WayReport;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What check says with a rig: the take beside what its chain should give. */
class WiringBesideTakeTest {
    /** An active pickup into an interface whose gain stands at 10 dB. */
    private static final Rig RIG = Rig.read(Path.of("src/test/resources/rigs/studio.yaml"), new Presets(Path.of("nowhere")));
    private static final WayReport WAY = ChainAnalysis.of(RIG.connection().orElseThrow(), RIG.instrument().lowestHz()).main();

    @Test
    void aTakeFarQuieterThanItsChainSaysByHowMuchAndWhatToLookAt() throws IOException {
        Assessment quiet = assessed(new ReadingsSketch().playing(50, WAY.usualDbfs() - 25).readings());
        assertThat(text(quiet)).contains("Against what your wiring should give", "25 dB lower than this chain predicts", "flat battery");
        JsonNode wiring = json(quiet).get("wiring");
        assertThat(wiring.get("levelDifferenceDb").asDouble()).isCloseTo(-25, within(0.01));
        assertThat(wiring.get("levelUncertaintyDb").asDouble()).isBetween(6.0, 20.0);
    }

    @Test
    void aTakeAsPredictedIsNotAccused() throws IOException {
        Assessment usual = assessed(new ReadingsSketch().playing(50, WAY.usualDbfs() + 2).readings());
        assertThat(text(usual)).contains("which may be the instrument or the hand").doesNotContain("flat battery");
    }

    @Test
    void hissFarOverWhatTheChainMakesIsTold() throws IOException {
        double hissDbfs = WAY.usualDbfs() - WAY.signalToNoiseDb() + 30;
        Assessment noisy = assessed(new ReadingsSketch().playing(50, WAY.usualDbfs()).noise(hissDbfs, Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY, hissDbfs).readings());
        assertThat(text(noisy)).contains("Hiss is 30 dB more than this chain makes by itself");
        assertThat(json(noisy).at("/wiring/noiseDifferenceDb").asDouble()).isCloseTo(30, within(0.01));
    }

    @Test
    void theObjectFitsItsSchema() throws IOException {
        JsonNode object = json(assessed(new ReadingsSketch().playing(50, -40).readings()));
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/check.schema.json"))).validate(object)).isEmpty();
        assertThat(object.has("wiring")).isTrue();
    }

    private static Assessment assessed(TakeReadings readings) {
        return new Coach(TargetWindow.DEFAULT).assess(readings, Optional.empty(), Optional.of(RigInUse.nominal(RIG)), PeakForecast.fromSpectrum(readings));
    }

    private static String text(Assessment assessment) {
        return String.join(" ", CheckText.lines(assessment, Sentences.english(), 100)).replaceAll("\\s+", " ");
    }

    private static JsonNode json(Assessment assessment) throws IOException {
        return new ObjectMapper().readTree(CheckJson.of(assessment, Sentences.english()));
    }
}
