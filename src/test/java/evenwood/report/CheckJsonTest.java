package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import evenwood.coach.Coach;
import evenwood.judge.TargetWindow;
import evenwood.measure.DistortionReading;
import evenwood.measure.TakeReadings;
import evenwood.measure.Tone;
import evenwood.takes.ReadingsSketch;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class CheckJsonTest {
    private static final double NONE = Double.NEGATIVE_INFINITY;

    static Stream<TakeReadings> takes() {
        return Stream.of(new ReadingsSketch().readings(),
            new ReadingsSketch().truePeakDbtp(NONE).playing(0, NONE).dynamics(NONE, NONE, NONE, 0).readings(),
            new ReadingsSketch().truePeakDbtp(-14).noise(-50, -55, -60, -58, new Tone(1000, -61)).clicks(3).dropouts(2)
                .distortion(DistortionReading.Verdict.ONSET, DistortionReading.Stage.BEFORE_CONVERTER, OptionalDouble.of(-18), 0, 0.97).readings());
    }

    @ParameterizedTest
    @MethodSource("takes")
    void theObjectFitsItsSchema(TakeReadings readings) throws IOException {
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/check.schema.json")));
        assertThat(schema.validate(json(readings))).isEmpty();
    }

    @Test
    void theSchemaIsAsStrictAsItLooks() throws IOException {
        JsonSchema schema = JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("docs/check.schema.json")));
        com.fasterxml.jackson.databind.node.ObjectNode object = (com.fasterxml.jackson.databind.node.ObjectNode) json(new ReadingsSketch().readings());
        object.remove("noise");
        object.put("nois", 1);
        assertThat(schema.validate(object)).hasSize(2);
    }

    @Test
    void whatWasNotMeasuredIsNull() throws IOException {
        JsonNode level = json(new ReadingsSketch().truePeakDbtp(NONE).playing(0, NONE).dynamics(NONE, NONE, NONE, 0).readings()).get("level");
        assertThat(level.get("truePeakDbtp").isNull()).isTrue();
        assertThat(level.get("softDbfs").isNull()).isTrue();
        assertThat(level.get("headroomDb").isNull()).isTrue();
    }

    @Test
    void theNumbersAreTheReadings() throws IOException {
        JsonNode object = json(new ReadingsSketch().truePeakDbtp(-7.25).noise(-61.5, -63.25, NONE, -66).readings());
        assertThat(object.at("/level/truePeakDbtp").doubleValue()).isEqualTo(-7.25);
        assertThat(object.at("/level/headroomDb").doubleValue()).isEqualTo(7.25);
        assertThat(object.at("/noise/humDbfs").doubleValue()).isEqualTo(-63.25);
        assertThat(object.at("/noise/mainsHz").doubleValue()).isEqualTo(50.02);
        assertThat(object.at("/noise/signalToNoiseDb").doubleValue()).isEqualTo(37.5);
        assertThat(object.at("/noise/buzzDbfs").isNull()).isTrue();
        assertThat(object.at("/findings/0/fault").textValue()).isEqualTo("hum");
    }

    private static JsonNode json(TakeReadings readings) throws IOException {
        return new ObjectMapper().readTree(CheckJson.of(new Coach(TargetWindow.DEFAULT).assess(readings), Sentences.english()));
    }
}
