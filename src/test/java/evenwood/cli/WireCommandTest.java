package evenwood.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SpecVersion;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WireCommandTest {
    private static final String HEAD = "name: My <fiddle>\ninstrument: violin\ntap: mixer-direct-out\ncontrols: channel-strip\n";
    private static final String PASSIVE = HEAD + """
        wiring:
          pickup: piezo-bridge
          chain:
            - { cable: instrument-cable, metres: 3 }
            - { box: passive-di }
            - { cable: microphone-cable, metres: 20 }
          input: { id: mixer-microphone }
          owned: { boxes: [piezo-di] }
        """;

    @TempDir
    Path folder;

    @Test
    void aPlanIsReadFromTopToBottom() throws IOException {
        Spoken spoken = Spoken.by("wire", rig(PASSIVE));
        assertThat(spoken.err()).isEmpty();
        assertThat(spoken.out()).contains("3 m instrument cable", "1  WRONG", "2  fits", "passive DI", "20 m balanced microphone cable",
            "A passive DI turns a high impedance into a low one", "Better with what you have", "active DI made for piezo pickups", "dBFS");
        assertThat(spoken.out().lines()).allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(160));
        assertThat(spoken.exitCode()).as("something is wrong").isEqualTo(1);
    }

    @Test
    void aRightPlanEndsWithNought() throws IOException {
        Spoken spoken = Spoken.by("wire", rig(PASSIVE.replace("passive-di", "piezo-di").replace("mixer-microphone }", "mixer-microphone, phantom: true }")));
        assertThat(spoken.out()).contains("Everything fits.").doesNotContain("WRONG");
        assertThat(spoken.exitCode()).isZero();
    }

    @Test
    void theObjectFitsItsSchema() throws IOException {
        for (String rig : new String[] {PASSIVE, HEAD + "wiring: { pickup: condenser-microphone, chain: [], input: { id: amp-microphone } }\n", PASSIVE
            .replace("  owned", "  thru: { chain: [{ cable: instrument-cable, metres: 3 }], input: { id: amp-instrument } }\n  sameOutlet: false\n  owned")}) {
            JsonNode object = new ObjectMapper().readTree(Spoken.by("wire", rig(rig), "--json").out());
            assertThat(JsonSchemaFactory.getInstance(SpecVersion.VersionFlag.V202012)
                .getSchema(Files.readString(Path.of("docs/wire.schema.json"))).validate(object)).isEmpty();
        }
    }

    @Test
    void aSheetIsAPictureOrAPage() throws Exception {
        Path svg = folder.resolve("plan.svg");
        Path html = folder.resolve("plan.html");
        Spoken.by("wire", rig(PASSIVE), "--sheet", svg.toString());
        Spoken.by("wire", rig(PASSIVE), "--sheet", html.toString());
        var picture = DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(Files.readAllBytes(svg)));
        assertThat(picture.getElementsByTagName("rect").getLength()).as("background").isEqualTo(1);
        assertThat(picture.getElementsByTagName("polygon").getLength()).as("pickup, DI, input").isEqualTo(3);
        assertThat(Files.readString(svg)).contains("Predicted response", "1: WRONG", "2: fits");
        Path png = folder.resolve("plan.png");
        Path pdf = folder.resolve("plan.PDF");
        Spoken.by("wire", rig(PASSIVE), "--sheet", png.toString());
        Spoken.by("wire", rig(PASSIVE), "--sheet", pdf.toString());
        assertThat(ImageIO.read(png.toFile())).satisfies(image -> assertThat(image.getWidth()).as("as wide as three boxes and two cables").isBetween(1800, 2100));
        assertThat(Files.readAllBytes(pdf)).startsWith("%PDF".getBytes(StandardCharsets.US_ASCII));
        assertThat(Files.readString(html, StandardCharsets.UTF_8)).contains("My &lt;fiddle&gt;", "<svg", "WRONG").doesNotContain("My <fiddle>");
        Spoken wrong = Spoken.by("wire", rig(PASSIVE), "--sheet", "plan.bmp");
        assertThat(wrong.err()).isEqualTo("wire: --sheet plan.bmp, but a name ending in .html, .pdf, .png or .svg is needed" + System.lineSeparator());
        assertThat(wrong.exitCode()).isEqualTo(2);
    }

    @Test
    void aRigThatDoesNotSayHowItIsPluggedInIsOneLine() throws IOException {
        String file = rig(HEAD);
        Spoken spoken = Spoken.by("wire", file);
        assertThat(spoken.err()).isEqualTo("wire: " + file + " does not say how it is plugged in; add a part named wiring, or let evenwood wire --ask write a rig"
            + System.lineSeparator());
        assertThat(spoken.exitCode()).isEqualTo(2);
        assertThat(Spoken.by("wire").err()).startsWith("wire: name a rig file");
        assertThat(Spoken.by("wire", rig(HEAD + "wiring: { pickup: piezo-brige, chain: [], input: { id: mixer-line } }\n")).err()).contains("did you mean piezo-bridge?");
    }

    @Test
    void aRigIsBuiltByQuestions() throws IOException {
        Path file = folder.resolve("asked.yaml");
        // The third answer is no number of a pickup and is asked again.
        String typed = String.join("\n", "Kitchen", "violin", "what?", "piezo-bridge", "instrument-cable", "2,5", "active-di", "battery", "none", "no",
            "microphone-cable", "10", "mixer-microphone", "", "no", "no", "piezo-di, passive-di") + "\n";
        Spoken spoken = Spoken.answering(typed, "wire", file.toString(), "--ask");
        assertThat(spoken.err()).contains("Which instrument?", "Answer with one of the numbers above", "is written.");
        assertThat(Files.readString(file)).contains("    - { cable: instrument-cable, metres: 2.50 }\n    - { box: active-di, power: battery }\n",
            "  owned: { boxes: [piezo-di, passive-di] }\n");
        assertThat(spoken.out()).contains("Kitchen: Violin");
        assertThat(Spoken.answering(typed, "wire", file.toString(), "--ask").err()).contains("exists already");
    }

    @Test
    void answersThatEndEarlyWriteNothing() {
        Path file = folder.resolve("half.yaml");
        Spoken spoken = Spoken.answering("Kitchen\n", "wire", file.toString(), "--ask");
        assertThat(spoken.err()).endsWith("wire: the answers end before all was asked; nothing was written" + System.lineSeparator());
        assertThat(file).doesNotExist();
        assertThat(spoken.exitCode()).isEqualTo(2);
    }

    private String rig(String text) throws IOException {
        return Files.writeString(folder.resolve("rig.yaml"), text).toString();
    }
}
