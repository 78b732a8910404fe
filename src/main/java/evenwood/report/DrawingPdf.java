package evenwood.report;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.state.RenderingMode;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Writes {@link Drawing}s as a PDF, a sheet each, with the letters in it; and as a picture of that. */
final class DrawingPdf {
    /** Comes with the PDF library; open licence (SIL OFL), most of Latin, Greek and Cyrillic. */
    private static final String FONT = "/org/apache/pdfbox/resources/ttf/LiberationSans-Regular.ttf";
    private static final float STRONG_EDGE_PART = 0.03f;
    private static final float PICTURE_DPI = 150;
    private static final String UNKNOWN_LETTER = "?";

    private final PDPageContentStream page;
    private final double height;
    private final PDFont font;

    private DrawingPdf(PDPageContentStream page, double height, PDFont font) {
        this.page = page;
        this.height = height;
        this.font = font;
    }

    static byte[] pdf(String title, List<Drawing> pages) {
        try (PDDocument document = document(title, pages); ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
    }

    /** The first sheet, read back from the PDF: only there the letters are in it, and no font of the system is looked for. */
    static byte[] png(String title, List<Drawing> pages) {
        try (PDDocument document = Loader.loadPDF(pdf(title, pages)); ByteArrayOutputStream bytes = new ByteArrayOutputStream()) {
            BufferedImage picture = new PDFRenderer(document).renderImageWithDPI(0, PICTURE_DPI);
            ImageIO.write(picture, "png", bytes);
            return bytes.toByteArray();
        } catch (IOException cannotHappen) {
            throw new UncheckedIOException(cannotHappen);
        }
    }

    private static PDDocument document(String title, List<Drawing> pages) throws IOException {
        PDDocument document = new PDDocument();
        document.getDocumentInformation().setTitle(title);
        PDFont font;
        try (InputStream letters = PDDocument.class.getResourceAsStream(FONT)) {
            font = PDType0Font.load(document, letters, true);
        }
        for (Drawing drawing : pages) {
            PDPage sheet = new PDPage(new PDRectangle((float) drawing.width(), (float) drawing.height()));
            document.addPage(sheet);
            try (PDPageContentStream content = new PDPageContentStream(document, sheet)) {
                DrawingPdf writer = new DrawingPdf(content, drawing.height(), font);
                for (Drawing.Mark mark : drawing.marks()) {
                    writer.mark(mark);
                }
            }
        }
        return document;
    }

    private void mark(Drawing.Mark mark) throws IOException {
        if (mark instanceof Drawing.Stroke stroke) {
            page.setLineWidth((float) stroke.width());
            page.setLineDashPattern(stroke.dashed() ? new float[] {4, 3} : new float[0], 0);
            page.setStrokingColor(colour(stroke.colour()));
            path(stroke.points());
            page.stroke();
        } else if (mark instanceof Drawing.Area area) {
            page.setNonStrokingColor(colour(area.fill()));
            page.setLineWidth(1);
            page.setLineDashPattern(new float[0], 0);
            path(area.points());
            page.closePath();
            if (area.edge().isEmpty()) {
                page.fill();
            } else {
                page.setStrokingColor(colour(area.edge()));
                page.fillAndStroke();
            }
        } else {
            words((Drawing.Words) mark);
        }
    }

    private void path(List<double[]> points) throws IOException {
        page.moveTo((float) points.get(0)[0], up(points.get(0)[1]));
        for (double[] point : points.subList(1, points.size())) {
            page.lineTo((float) point[0], up(point[1]));
        }
    }

    private void words(Drawing.Words words) throws IOException {
        String text = showable(words.text());
        float size = (float) words.size();
        float width = font.getStringWidth(text) / 1000 * size;
        float left = (float) words.x() - switch (words.anchor()) {
            case START -> 0;
            case MIDDLE -> width / 2;
            case END -> width;
        };
        page.setNonStrokingColor(colour(words.colour()));
        page.setStrokingColor(colour(words.colour()));
        page.setLineWidth(STRONG_EDGE_PART * size);
        page.beginText();
        page.setRenderingMode(words.strong() ? RenderingMode.FILL_STROKE : RenderingMode.FILL);
        page.setFont(font, size);
        page.newLineAtOffset(left, up(words.y()));
        page.showText(text);
        page.endText();
    }

    /** A letter the font has not got must not cost the sheet. */
    private String showable(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().mapToObj(Character::toString).forEach(letter -> {
            try {
                font.encode(letter);
                shown.append(letter);
            } catch (IOException | IllegalArgumentException notThere) {
                shown.append(UNKNOWN_LETTER);
            }
        });
        return shown.toString();
    }

    private float up(double y) {
        return (float) (height - y);
    }

    private static java.awt.Color colour(String hex) {
        return java.awt.Color.decode(hex);
    }
}
