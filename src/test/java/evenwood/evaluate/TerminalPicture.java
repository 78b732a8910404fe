package evenwood.evaluate;

import evenwood.cli.EvenwoodCommand;
import java.awt.Color;
import java.awt.Font;
import java.awt.FontMetrics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import javax.imageio.ImageIO;

/** Draws what {@code check --demo} says, for the README: {@code mvn -q -Pevaluate verify -Devaluation=TerminalPicture}. */
public final class TerminalPicture implements Evaluation {
    private static final File FILE = new File("docs/pictures/check-demo.png");
    private static final int MARGIN_PX = 28;
    private static final Color PAPER = new Color(0xfb, 0xfa, 0xf6);
    private static final Color INK = new Color(0x22, 0x30, 0x2a);

    @Override
    public void run(PrintStream out) {
        List<String> lines = printed("check", "--demo");
        try {
            FILE.getParentFile().mkdirs();
            ImageIO.write(paint(lines), "png", FILE);
        } catch (IOException problem) {
            throw new UncheckedIOException(problem);
        }
        out.println(FILE);
    }

    private static List<String> printed(String... command) {
        ByteArrayOutputStream heard = new ByteArrayOutputStream();
        EvenwoodCommand.run(heard, command);
        return heard.toString(StandardCharsets.UTF_8).lines().toList();
    }

    private static BufferedImage paint(List<String> lines) {
        Font font = new Font(Font.MONOSPACED, Font.PLAIN, 15);
        FontMetrics metrics = new BufferedImage(1, 1, BufferedImage.TYPE_INT_RGB).createGraphics().getFontMetrics(font);
        int widthPx = lines.stream().mapToInt(metrics::stringWidth).max().orElse(0) + 2 * MARGIN_PX;
        int linePx = metrics.getHeight() + 2;
        BufferedImage image = new BufferedImage(widthPx, lines.size() * linePx + 2 * MARGIN_PX, BufferedImage.TYPE_INT_RGB);
        Graphics2D g = image.createGraphics();
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setColor(PAPER);
        g.fillRect(0, 0, image.getWidth(), image.getHeight());
        g.setColor(INK);
        g.setFont(font);
        for (int i = 0; i < lines.size(); i++) {
            g.drawString(lines.get(i), MARGIN_PX, MARGIN_PX + i * linePx + metrics.getAscent());
        }
        g.dispose();
        return image;
    }
}
