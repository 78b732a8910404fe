package evenwood.cli;

import evenwood.journal.KeptTake;
import evenwood.report.JournalText;
import evenwood.report.Sentences;
import evenwood.report.TakeSheet;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** Writes sheets to a file whose name says as what. */
final class SheetFile {
    private static final List<String> ENDINGS = List.of(".html", ".pdf", ".png", ".svg");

    private SheetFile() { }

    /** Refuses a name before anything long is done. */
    static void check(String command, String file) {
        if (ENDINGS.stream().noneMatch(file.toLowerCase(Locale.ROOT)::endsWith)) {
            throw new BadInput(command + ": --sheet " + file + ", but a name ending in .html, .pdf, .png or .svg is needed");
        }
    }

    static void write(String command, String file, List<TakeSheet.Subject> subjects) {
        check(command, file);
        ResultFile.write(command, file, content(file.toLowerCase(Locale.ROOT), subjects));
    }

    private static byte[] content(String name, List<TakeSheet.Subject> subjects) {
        Sentences sentences = Sentences.english();
        if (name.endsWith(".pdf")) {
            return TakeSheet.pdf(subjects, sentences);
        }
        if (name.endsWith(".png")) {
            return TakeSheet.png(subjects, sentences);
        }
        return (name.endsWith(".svg") ? TakeSheet.svg(subjects, sentences) : TakeSheet.html(subjects, sentences)).getBytes(StandardCharsets.UTF_8);
    }

    static TakeSheet.Subject of(KeptTake take) {
        return new TakeSheet.Subject(JournalText.title(take.line()), new JournalText(Sentences.english()).where(take.line()), take.line().note(), take.assessment(), take.rig());
    }
}
