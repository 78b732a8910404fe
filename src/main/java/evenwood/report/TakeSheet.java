package evenwood.report;

import evenwood.coach.Assessment;
import evenwood.coach.Move;
import evenwood.judge.Finding;
import evenwood.rig.Connection;
import evenwood.rig.Line;
import evenwood.rig.Link;
import evenwood.rig.Rig;
import evenwood.rig.Setting;
import evenwood.wiring.ChainAnalysis;
import evenwood.wiring.Fit;
import evenwood.wiring.WiringRules;
import evenwood.wiring.WiringVerdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One page for the music stand or the engineer: instrument, chain, phantom, controls as they stand, what is to be done, warnings, levels, curve.
 *
 * <p>Several takes make several pages: a whole set of instruments.
 */
public final class TakeSheet {
    private static final double MARGIN = 40;
    private static final double INNER = Drawing.A4_WIDTH - 2 * MARGIN;
    private static final double BOX_HEIGHT = 46;
    private static final int ROOMY_BOXES = 5;
    private static final double PHANTOM_WIDTH = 190;
    private static final double PHANTOM_HEIGHT = 21;
    private static final double GAP = 16;
    private static final double HIGHEST_CURVE = 260;
    private static final double LOWEST_CURVE = 110;
    private static final double LEAST_BELOW = Drawing.A4_HEIGHT - MARGIN - LOWEST_CURVE;
    private static final double ROOM_FOR_HEADING = 50;
    private static final int WORDS_A_LINE = 104;

    private final Subject subject;
    private final Sentences sentences;
    private final Drawing page = Drawing.a4();
    private double y = MARGIN + 14;

    /**
     * What a sheet is about.
     *
     * @param title      such as the instrument's name
     * @param line       when and where; empty for neither
     * @param note       the player's words
     * @param assessment what was measured and found
     * @param rig        as it stood
     */
    public record Subject(String title, String line, String note, Assessment assessment, Optional<Rig> rig) { }

    private TakeSheet(Subject subject, Sentences sentences) {
        this.subject = subject;
        this.sentences = sentences;
    }

    public static String html(List<Subject> subjects, Sentences sentences) {
        return DrawingSvg.html(title(subjects), pages(subjects, sentences), sentences.locale());
    }

    /** The first sheet as a picture. */
    public static String svg(List<Subject> subjects, Sentences sentences) {
        return DrawingSvg.svg(pages(subjects, sentences).get(0));
    }

    public static byte[] pdf(List<Subject> subjects, Sentences sentences) {
        return DrawingPdf.pdf(title(subjects), pages(subjects, sentences));
    }

    /** The first sheet as a picture. */
    public static byte[] png(List<Subject> subjects, Sentences sentences) {
        return DrawingPdf.png(title(subjects), pages(subjects, sentences));
    }

    private static List<Drawing> pages(List<Subject> subjects, Sentences sentences) {
        return subjects.stream().map(subject -> new TakeSheet(subject, sentences).drawn()).toList();
    }

    private static String title(List<Subject> subjects) {
        return String.join(", ", subjects.stream().map(Subject::title).distinct().toList());
    }

    private Drawing drawn() {
        page.heading(MARGIN, y, 20, subject.title());
        y += 16;
        paragraph(10, subject.line(), 1);
        paragraph(10, subject.note(), 2);
        subject.rig().flatMap(Rig::connection).ifPresent(this::connection);
        subject.rig().ifPresent(rig -> controls(rig.settings()));
        moves(subject.assessment().moves());
        levels();
        warnings();
        double top = Math.min(y + 22, LEAST_BELOW);
        page.heading(MARGIN, top - 8, 11, subject.assessment().verdict().tone().map(tone -> sentences.say("sheet.tone-wanted", tone.name())).orElseGet(() -> sentences.say("sheet.tone")));
        SheetCurve.draw(page, sentences, subject.assessment(), MARGIN + 18, top, INNER - 18, Math.min(HIGHEST_CURVE, Drawing.A4_HEIGHT - MARGIN - 14 - top));
        return page;
    }

    private void connection(Connection connection) {
        heading(sentences.say("sheet.plugged"));
        way(connection.pickup().name(), connection.main());
        connection.thru().ifPresent(line -> way(sentences.say("sheet.thru"), line));
        phantom(connection.main().input().phantom() || connection.thru().map(line -> line.input().phantom()).orElse(false));
    }

    /** To be seen first, on a dim stage and in black and white: black where it is on. */
    private void phantom(boolean on) {
        page.box(MARGIN, y - 4, PHANTOM_WIDTH, PHANTOM_HEIGHT, on ? Drawing.BLACK : "#ffffff", Drawing.BLACK);
        page.heading(MARGIN + 8, y + 11, 13, sentences.say("sheet.phantom", on ? 1 : 0), on ? "#ffffff" : Drawing.BLACK);
        y += PHANTOM_HEIGHT + 4;
    }

    private void way(String from, Line line) {
        List<String> boxes = new ArrayList<>(List.of(from));
        line.links().stream().map(TakeSheet::words).forEach(boxes::add);
        boxes.add(WiringWords.input(line.input()));
        double width = (INNER - (boxes.size() - 1) * GAP) / boxes.size();
        for (int i = 0; i < boxes.size(); i++) {
            double left = MARGIN + i * (width + GAP);
            page.box(left, y, width, BOX_HEIGHT, "#f4f4f0", Drawing.BLACK);
            if (i > 0) {
                page.line(left - GAP, y + BOX_HEIGHT / 2, left, y + BOX_HEIGHT / 2, 1.5, Drawing.BLACK);
            }
            List<String> lines = new ArrayList<>();
            double size = boxes.size() > ROOMY_BOXES ? 8 : 9;
            TextWrap.wrap(lines, (int) (width / (0.54 * size)), "", boxes.get(i));
            page.centred(left + width / 2, y + BOX_HEIGHT / 2, size, lines.subList(0, Math.min(4, lines.size())));
        }
        y += BOX_HEIGHT + 14;
    }

    private static String words(Link link) {
        return WiringWords.link(link);
    }

    private void controls(List<Setting> settings) {
        heading(sentences.say("sheet.controls"));
        y = SheetControls.draw(page, settings, MARGIN, y - 4, INNER) + 6;
    }

    private void moves(List<Move> moves) {
        if (moves.isEmpty()) {
            return;
        }
        heading(sentences.say("sheet.moves"));
        for (Move move : moves) {
            paragraph(11, move.order() + ". " + sentences.say(move.control().plainName()) + ": " + CheckText.change(move, sentences) + " – " + sentences.say(move.why()), 3);
        }
    }

    private void warnings() {
        List<String> warnings = new ArrayList<>();
        for (Finding finding : subject.assessment().verdict().findings()) {
            warnings.add((finding.isStrong() ? "!!! " : "! ") + sentences.say("fault." + finding.fault().id()) + ": " + sentences.say(finding.evidence()));
        }
        subject.rig().ifPresent(rig -> rig.connection().ifPresent(connection -> WiringRules.verdicts(ChainAnalysis.of(connection, rig.instrument().lowestHz())).stream()
            .filter(verdict -> verdict.fit().compareTo(Fit.WRONG) >= 0).map(this::words).forEach(warnings::add)));
        if (warnings.isEmpty()) {
            return;
        }
        heading(sentences.say("sheet.warnings"));
        for (int i = 0; i < warnings.size(); i++) {
            if (y > LEAST_BELOW - ROOM_FOR_HEADING) {
                paragraph(9, sentences.say("sheet.more", warnings.size() - i), 1);
                return;
            }
            paragraph(9, warnings.get(i), 4);
        }
    }

    private String words(WiringVerdict verdict) {
        String evidence = sentences.say(WiringWords.evidence(verdict));
        return verdict.fit() == Fit.DANGER ? "!!! " + evidence + ". " + sentences.say(WiringWords.cure(verdict)) : "!! " + evidence;
    }

    private void levels() {
        var readings = subject.assessment().readings();
        heading(sentences.say("sheet.levels"));
        paragraph(10, sentences.say("sheet.level-line", sentences.level(readings.truePeak().truePeakDbtp()), sentences.level(readings.dynamics().softDbfs()),
            sentences.level(readings.dynamics().usualDbfs()), sentences.level(readings.dynamics().hardDbfs()), sentences.level(readings.noise().floorDbfs()),
            sentences.level(readings.signalToNoiseDb())), 2);
    }

    private void heading(String words) {
        y += 8;
        page.heading(MARGIN, y, 11, words);
        y += 14;
    }

    private void paragraph(double size, String words, int mostLines) {
        if (words.isEmpty()) {
            return;
        }
        List<String> lines = new ArrayList<>();
        TextWrap.wrap(lines, (int) (WORDS_A_LINE * 10 / size), "", words.replaceAll("\\s+", " "));
        for (int i = 0; i < Math.min(mostLines, lines.size()); i++) {
            page.words(MARGIN, y, size, lines.get(i) + (i == mostLines - 1 && lines.size() > mostLines ? " …" : ""));
            y += size + 3;
        }
    }
}
