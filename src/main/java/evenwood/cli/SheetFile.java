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
    private static final List<String> PICTURES = List.of(".png", ".svg");
    private static final List<String> ENDINGS = List.of(".html", ".pdf", ".png", ".svg");

    private SheetFile() { }

    /** Refuses a name before anything long is done. */
    static void check(String command, String file) {
        if (!ENDINGS.contains(ending(file))) {
            throw new BadInput(command + ": --sheet " + file + ", but a name ending in .html, .pdf, .png or .svg is needed");
        }
    }

    /** With its dot, in small letters. */
    static String ending(String file) {
        return file.substring(Math.max(0, file.lastIndexOf('.'))).toLowerCase(Locale.ROOT);
    }

    static void write(String command, String file, List<TakeSheet.Subject> subjects, Sentences sentences) {
        check(command, file);
        if (subjects.size() > 1 && PICTURES.contains(ending(file))) {
            throw new BadInput(command + ": --sheet " + file + ", but a picture holds one take; for several name a file ending in .pdf or .html");
        }
        ResultFile.write(command, file, content(ending(file), subjects, sentences));
    }

    private static byte[] content(String ending, List<TakeSheet.Subject> subjects, Sentences sentences) {
        return switch (ending) {
            case ".pdf" -> TakeSheet.pdf(subjects, sentences);
            case ".png" -> TakeSheet.png(subjects, sentences);
            case ".svg" -> TakeSheet.svg(subjects, sentences).getBytes(StandardCharsets.UTF_8);
            default -> TakeSheet.html(subjects, sentences).getBytes(StandardCharsets.UTF_8);
        };
    }

    static TakeSheet.Subject of(KeptTake take, Sentences sentences) {
        return new TakeSheet.Subject(JournalText.title(take.line()), new JournalText(sentences).where(take.line()), take.line().note(), take.assessment(), take.rig());
    }
}
