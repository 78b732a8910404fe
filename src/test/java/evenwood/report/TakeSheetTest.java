package evenwood.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenwood.journal.KeptExamples;
import evenwood.journal.TakeToKeep;
import evenwood.rig.Connection;
import evenwood.rig.Line;
import evenwood.rig.PluggedInput;
import evenwood.rig.Rig;
import evenwood.takes.ReadingsSketch;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import javax.imageio.ImageIO;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class TakeSheetTest {
    private static final TakeToKeep TAKE = KeptExamples.measured();
    private static final TakeSheet.Subject FULL = new TakeSheet.Subject("Żółty “fiddle” <1> 笛", "2026-03-14 20:15, The Harp", "strings a week old", TAKE.assessment(), TAKE.rig());
    private static final TakeSheet.Subject BARE = new TakeSheet.Subject("sketch", "", "", KeptExamples.assessment(new ReadingsSketch().playing(0, -100)), Optional.empty());

    @Test
    void aPdfSaysAllThatIsNeededOnOnePageATake() throws IOException {
        byte[] pdf = TakeSheet.pdf(List.of(FULL, BARE), Sentences.english());
        try (PDDocument document = Loader.loadPDF(pdf)) {
            assertThat(document.getNumberOfPages()).isEqualTo(2);
            String words = new PDFTextStripper().getText(document);
            assertThat(words).contains("Żółty “fiddle” <1> ?", "The Harp", "strings a week old", "Phantom power: NO", "Trim", "Fader", "0 dB", "Still to turn",
                "Warnings", "hum:", "A passive DI turns a high impedance into a low one", "Loudest peak", "shaded: octave-mandolin", "1 kHz", "nothing was played");
        }
    }

    @Test
    void everyMarkLiesOnThePage() throws IOException {
        try (PDDocument document = Loader.loadPDF(TakeSheet.pdf(List.of(FULL), Sentences.english()))) {
            assertThat(document.getPage(0).getMediaBox().getWidth()).as("A4").isBetween(595f, 596f);
        }
        var svg = parsed(TakeSheet.svg(List.of(FULL), Sentences.english()));
        var texts = svg.getElementsByTagName("text");
        assertThat(texts.getLength()).isGreaterThan(40);
        for (int i = 0; i < texts.getLength(); i++) {
            var text = (org.w3c.dom.Element) texts.item(i);
            assertThat(Double.parseDouble(text.getAttribute("x"))).as(text.getTextContent()).isBetween(0.0, Drawing.A4_WIDTH);
            assertThat(Double.parseDouble(text.getAttribute("y"))).as(text.getTextContent()).isBetween(0.0, Drawing.A4_HEIGHT);
        }
    }

    @Test
    void aPageOfHtmlNeedsNothingElse() {
        String html = TakeSheet.html(List.of(FULL, BARE), Sentences.english());
        assertThat(html).contains("<title>Żółty “fiddle” &lt;1&gt; 笛, sketch</title>").doesNotContain("<1>", "src=", "href=");
        assertThat(html.split("<svg", -1)).hasSize(3);
    }

    @Test
    void theSheetSpeaksGermanToo() {
        assertThat(TakeSheet.html(List.of(FULL, BARE), Sentences.in(Locale.GERMAN))).contains("<html lang=\"de\">", "Phantomspeisung: NEIN", "Regler, wie sie stehen", "Noch zu drehen",
            "Warnungen", "Brummen: Brummen vom Netz", "Lauteste Spitze", "getönt: octave-mandolin", "nichts wurde gespielt")
            .doesNotContain("Phantom power", "Controls as", "Still to turn", "Warnings", "Loudest peak", "shaded");
    }

    /** Seen first, also in black and white. */
    @Test
    void phantomPowerThatIsOnIsWhiteOnBlack() {
        Rig rig = FULL.rig().orElseThrow();
        Connection connection = rig.connection().orElseThrow();
        Line line = connection.main();
        Connection on = new Connection(connection.pickup(), new Line(line.links(), new PluggedInput(line.input().input(), line.input().gainDb(), true)), connection.thru(),
            connection.sameOutlet(), connection.owned());
        Rig powered = new Rig(rig.name(), rig.instrument(), rig.tap(), rig.controls(), rig.settings(), Optional.of(on));
        assertThat(TakeSheet.svg(List.of(new TakeSheet.Subject("fiddle", "", "", FULL.assessment(), Optional.of(powered))), Sentences.english()))
            .containsPattern("font-weight=\"bold\"[^>]*fill=\"#ffffff\">Phantom power: YES<");
    }

    @Test
    void aPictureHasInkOnIt() throws IOException {
        BufferedImage picture = ImageIO.read(new ByteArrayInputStream(TakeSheet.png(List.of(FULL), Sentences.english())));
        long dark = 0;
        for (int x = 0; x < picture.getWidth(); x++) {
            for (int y = 0; y < picture.getHeight(); y++) {
                dark += (picture.getRGB(x, y) & 0xFF00) < 0x8000 ? 1 : 0;
            }
        }
        assertThat(picture.getWidth()).isEqualTo(1240);
        assertThat(dark).isBetween(5_000L, 400_000L);
    }

    private static org.w3c.dom.Document parsed(String svg) throws IOException {
        try {
            return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        } catch (javax.xml.parsers.ParserConfigurationException | org.xml.sax.SAXException problem) {
            throw new IOException(problem);
        }
    }
}
