package evenwood.targets;

import evenwood.measure.ThirdOctave;
import evenwood.rig.ToneTarget;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** A target as a small picture: band of its spread, line of its level, and a thin line for each source. */
final class TargetPicture {
    private static final int WIDTH = 460;
    private static final int HEIGHT = 230;
    private static final int LEFT = 40;
    private static final int TOP = 24;
    private static final int BOTTOM = 200;
    private static final double HIGHEST_DB = 5;
    private static final double LOWEST_DB = -65;

    private TargetPicture() { }

    static void write(Path file, String title, ToneTarget target, Map<String, List<Double>> sources) throws IOException {
        StringBuilder svg = new StringBuilder();
        svg.append(String.format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"10\">%n", WIDTH, HEIGHT));
        svg.append(String.format("<rect width=\"%d\" height=\"%d\" fill=\"#ffffff\"/><text x=\"%d\" y=\"14\" font-size=\"12\">%s</text>%n", WIDTH, HEIGHT, LEFT, title));
        for (int db = 0; db >= -60; db -= 20) {
            svg.append(String.format(Locale.ROOT, "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\" stroke=\"#dddddd\"/><text x=\"4\" y=\"%.1f\">%d dB</text>%n",
                LEFT, WIDTH, y(db), y(db), y(db) + 3, db));
        }
        for (int band = 0; band < ToneTarget.BANDS; band += 3) {
            svg.append(String.format(Locale.ROOT, "<text x=\"%.1f\" y=\"216\" text-anchor=\"middle\">%s</text>%n", x(band),
                ThirdOctave.FROM_50_HZ_TO_16_KHZ.get(band).nominalName().replace(" Hz", "").replace(" kHz", "k")));
        }
        svg.append("<polygon fill=\"#56b4e9\" fill-opacity=\"0.35\" points=\"").append(ribbon(target)).append("\"/>\n");
        sources.values().forEach(levels -> svg.append(line(levels, "#888888", 0.8)));
        svg.append(line(target.levelDb(), "#0072b2", 2.2)).append("</svg>\n");
        Files.createDirectories(file.getParent());
        Files.write(file, svg.toString().getBytes(StandardCharsets.UTF_8));
    }

    private static String ribbon(ToneTarget target) {
        StringBuilder points = new StringBuilder();
        for (int band = 0; band < ToneTarget.BANDS; band++) {
            points.append(point(band, target.levelDb().get(band) + target.spreadDb().get(band)));
        }
        for (int band = ToneTarget.BANDS - 1; band >= 0; band--) {
            points.append(point(band, target.levelDb().get(band) - target.spreadDb().get(band)));
        }
        return points.toString().strip();
    }

    private static String line(List<Double> levels, String colour, double width) {
        StringBuilder points = new StringBuilder();
        for (int band = 0; band < levels.size(); band++) {
            points.append(point(band, levels.get(band)));
        }
        return String.format(Locale.ROOT, "<polyline fill=\"none\" stroke=\"%s\" stroke-width=\"%.1f\" points=\"%s\"/>%n", colour, width, points.toString().strip());
    }

    private static String point(int band, double db) {
        return String.format(Locale.ROOT, "%.1f,%.1f ", x(band), y(db));
    }

    private static double x(int band) {
        return LEFT + 8 + band * (WIDTH - LEFT - 24.0) / (ToneTarget.BANDS - 1);
    }

    private static double y(double db) {
        double within = Math.max(LOWEST_DB, Math.min(HIGHEST_DB, db));
        return TOP + (HIGHEST_DB - within) / (HIGHEST_DB - LOWEST_DB) * (BOTTOM - TOP);
    }
}
