package evenwood.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LearnedFileTest {
    private static final ControlSet CONTROLS = new Presets(Path.of("none")).controls("channel-strip");

    @TempDir
    Path folder;

    @Test
    void whatIsKeptIsReadAgainAndFitsItsSchema() throws IOException {
        Path rig = folder.resolve("kitchen.yaml");
        LearnedFile.keep(mid(-3), rig, CONTROLS);
        LearnedFile.keep(filter(), rig, CONTROLS);
        List<LearnedControl> read = LearnedFile.read(rig, CONTROLS);
        assertThat(read).containsExactly(mid(-3), filter());
        JsonNode tree = new YAMLMapper().readTree(Files.readString(folder.resolve("kitchen.learned.yaml")));
        assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
            .getSchema(Files.readString(Path.of("presets/schema/learned.schema.json"))).validate(tree)).isEmpty();
    }

    @Test
    void aControlThatIsLearnedAgainIsReplaced() {
        Path rig = folder.resolve("kitchen.yaml");
        LearnedFile.keep(mid(-3), rig, CONTROLS);
        LearnedFile.keep(filter(), rig, CONTROLS);
        LearnedFile.keep(mid(-5), rig, CONTROLS);
        assertThat(LearnedFile.read(rig, CONTROLS)).containsExactlyInAnyOrder(mid(-5), filter());
    }

    @Test
    void aRigOfWhichNothingWasLearnedHasNoFile() {
        assertThat(LearnedFile.read(folder.resolve("kitchen.yaml"), CONTROLS)).isEmpty();
    }

    @Test
    void aWrongFileIsToldByLineAndField() throws IOException {
        Path file = Files.writeString(folder.resolve("kitchen.learned.yaml"), """
            learned:
              - control: Bass
                how: sweep
                curves: []
            """);
        assertThatThrownBy(() -> LearnedFile.read(folder.resolve("kitchen.yaml"), CONTROLS)).isInstanceOf(PresetProblem.class)
            .hasMessageStartingWith(file + ", line 2, learned[1].control: Bass, but the rig's controls are Trim, HPF, Low");
    }

    @Test
    void betweenItsPointsACurveIsStraight() {
        List<Double> rising = java.util.stream.IntStream.range(0, LearnedControl.FREQUENCIES_HZ.size()).mapToObj(i -> (double) i).toList();
        LearnedControl.Curve curve = new LearnedControl.Curve(setting(0), rising, flat(0));
        assertThat(curve.db(1000)).isCloseTo(68, within(1e-9));
        assertThat(curve.db(1000 * Math.pow(2, 0.5 / 12))).isCloseTo(68.5, within(1e-9));
        assertThat(curve.db(1)).isCloseTo(0, within(1e-9));
        assertThat(curve.db(40_000)).isCloseTo(120, within(1e-9));
    }

    private static LearnedControl mid(double db) {
        return new LearnedControl("Mid", LearnedControl.How.TAKES,
            List.of(new LearnedControl.Curve(setting(db), flat(db), flat(0.5)), new LearnedControl.Curve(setting(0), flat(0), flat(0))),
            List.of(new LearnedControl.Answer(setting(0), setting(db), List.of(new LearnedControl.Band(501.187, -2.5, 0.75), new LearnedControl.Band(630.957, -2.25, 0.75)))));
    }

    private static LearnedControl filter() {
        Control control = CONTROLS.control("HPF").orElseThrow();
        return new LearnedControl("HPF", LearnedControl.How.SWEEP, List.of(
            new LearnedControl.Curve(Setting.neutral(control), flat(0), flat(0), OptionalDouble.of(-3.5)),
            new LearnedControl.Curve(Setting.neutral(control).switched(true), flat(-1), flat(0.125))), List.of());
    }

    private static Setting setting(double db) {
        return Setting.neutral(CONTROLS.control("Mid").orElseThrow()).withGain(db).withFrequency(500);
    }

    private static List<Double> flat(double value) {
        return Collections.nCopies(LearnedControl.FREQUENCIES_HZ.size(), value);
    }
}
