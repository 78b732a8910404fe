package evenwood.report;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Writes {@link Drawing}s as SVG, and as one page of HTML that needs nothing else and prints each on a sheet of its own. */
final class DrawingSvg {
    private DrawingSvg() { }

    /** One picture, and words under it. */
    static String htmlWithWords(String title, Drawing picture, List<String> lines, Locale language) {
        StringBuilder html = head(title, language).append("body{font-family:sans-serif;margin:2em;max-width:80em}pre{font-size:0.9em;overflow-x:auto}svg{max-width:100%}</style></head><body>\n<h1>")
            .append(escaped(title)).append("</h1>\n").append(svg(picture)).append("\n<pre>");
        lines.forEach(line -> html.append(escaped(line)).append('\n'));
        return html.append("</pre>\n</body></html>\n").toString();
    }

    private static StringBuilder head(String title, Locale language) {
        return new StringBuilder("<!DOCTYPE html>\n<html lang=\"").append(language.getLanguage().isEmpty() ? "en" : language.getLanguage())
            .append("\"><head><meta charset=\"utf-8\"><title>").append(escaped(title)).append("</title><style>");
    }

    static String html(String title, List<Drawing> pages, Locale language) {
        StringBuilder html = head(title, language).append("@page{size:A4;margin:0}body{margin:0;background:#888}svg{display:block;width:100%;max-width:210mm;height:auto;"
                + "margin:0 auto 4mm;background:#fff;page-break-after:always}@media print{body{background:#fff}svg{margin:0;max-width:none}}</style></head><body>\n");
        pages.forEach(page -> html.append(svg(page)));
        return html.append("</body></html>\n").toString();
    }

    static String svg(Drawing drawing) {
        StringBuilder svg = new StringBuilder(String.format(Locale.ROOT,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %.2f %.2f\" font-family=\"'Liberation Sans',Arial,Helvetica,sans-serif\"><rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>\n",
            drawing.width(), drawing.height()));
        drawing.marks().forEach(mark -> svg.append(mark(mark)).append('\n'));
        return svg.append("</svg>\n").toString();
    }

    private static String mark(Drawing.Mark mark) {
        if (mark instanceof Drawing.Stroke stroke) {
            return String.format(Locale.ROOT, "<polyline fill=\"none\" stroke=\"%s\" stroke-width=\"%.2f\"%s points=\"%s\"/>", stroke.colour(), stroke.width(),
                stroke.dashed() ? " stroke-dasharray=\"4 3\"" : "", points(stroke.points()));
        }
        if (mark instanceof Drawing.Area area) {
            return String.format(Locale.ROOT, "<polygon fill=\"%s\"%s points=\"%s\"/>", area.fill(), area.edge().isEmpty() ? "" : " stroke=\"" + area.edge() + "\"", points(area.points()));
        }
        Drawing.Words words = (Drawing.Words) mark;
        return String.format(Locale.ROOT, "<text x=\"%.2f\" y=\"%.2f\" font-size=\"%.1f\"%s text-anchor=\"%s\" fill=\"%s\">%s</text>", words.x(), words.y(), words.size(),
            words.strong() ? " font-weight=\"bold\"" : "", words.anchor().name().toLowerCase(Locale.ROOT), words.colour(), escaped(words.text()));
    }

    private static String points(List<double[]> points) {
        return points.stream().map(point -> String.format(Locale.ROOT, "%.2f,%.2f", point[0], point[1])).collect(Collectors.joining(" "));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace("\"", "&quot;");
    }
}
