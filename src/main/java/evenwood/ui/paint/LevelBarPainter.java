package evenwood.ui.paint;

import evenwood.ui.scale.LevelScale;
import javafx.scene.canvas.GraphicsContext;

/** One level as a bar lying on its side. */
public final class LevelBarPainter {
    private final Ink ink;

    public LevelBarPainter(Ink ink) {
        this.ink = ink;
    }

    public void paint(GraphicsContext g, double width, double height, double peakDbfs) {
        double tall = height * 0.55;
        double top = (height - tall) / 2;
        g.setFill(ink.trough());
        g.fillRoundRect(0, top, width, tall, tall, tall);
        double part = LevelScale.FULL.part(peakDbfs);
        if (part > 0) {
            g.setFill(ink.heard());
            g.fillRoundRect(0, top, Math.max(tall, part * width), tall, tall, tall);
        }
    }
}
