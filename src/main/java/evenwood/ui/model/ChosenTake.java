package evenwood.ui.model;

import evenwood.coach.Recall;
import evenwood.eq.RigInUse;
import evenwood.journal.Event;
import evenwood.journal.Journal;
import evenwood.journal.JournalProblem;
import evenwood.journal.KeptTake;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeWords;
import evenwood.report.Sentences;
import evenwood.report.TakeSheet;
import evenwood.rig.Rig;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.Callable;

/**
 * The kept take the player looks at: what was said and found, its sheet, and how to set everything as it stood then.
 *
 * <p>Thread: the screen's; answers may be read by any.
 */
public final class ChosenTake {
    /** As what a sheet can be saved. */
    public static final List<String> SHEET_ENDINGS = List.of(".pdf", ".html", ".png", ".svg");
    /** As what several sheets can be saved in one file. */
    public static final List<String> SHEETS_ENDINGS = List.of(".pdf", ".html");

    /** @param events what had happened to the instrument before, oldest first */
    public record Opened(KeptTake take, List<Event> events) { }

    private final Path file;
    private final Runnable changed;
    private final Later<Opened> opened = new Later<>("evenwood-journal-take");
    private final Later<byte[]> sheet = new Later<>("evenwood-journal-sheet");
    private final Later<Path> saved = new Later<>("evenwood-journal-save-sheet");
    private final Later<Path> sound = new Later<>("evenwood-journal-sound");
    private final Later<Recall> recall = new Later<>("evenwood-journal-recall");
    private OptionalLong id = OptionalLong.empty();

    /** @param changed told when what is said about a take is another */
    ChosenTake(Path file, Runnable changed) {
        this.file = file;
        this.changed = changed;
    }

    public OptionalLong id() {
        return id;
    }

    public Later<Opened> opened() {
        return opened;
    }

    /** A picture of its sheet, PNG. */
    public Later<byte[]> sheet() {
        return sheet;
    }

    /** The file a sheet was written to last. */
    public Later<Path> saved() {
        return saved;
    }

    /** Its sound as a file of its own, if it was kept; gone when the window closes. */
    public Later<Path> sound() {
        return sound;
    }

    public void askSound() {
        long number = id.orElseThrow();
        sound.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                Path copy = Files.createTempFile("evenwood-take-" + number + "-", ".flac");
                copy.toFile().deleteOnExit();
                return Files.write(copy, journal.flac(number).orElseThrow());
            }
        });
    }

    /** How to set everything as it stood; fails with one line for a take that was kept without controls. */
    public Later<Recall> recall() {
        return recall;
    }

    /** Looks at this take from now on. */
    public void open(long number) {
        id = OptionalLong.of(number);
        saved.drop();
        sheet.drop();
        recall.drop();
        sound.drop();
        opened.drop();
        opened.ask(() -> read(number));
    }

    private Opened read(long number) {
        try (Journal journal = Journal.open(file)) {
            KeptTake take = journal.take(number);
            return new Opened(take, journal.events().stream().filter(event -> event.concerns(take.line()) && !event.at().isAfter(take.line().keptAt())).toList());
        }
    }

    /** Says something else about it. */
    public void say(TakeWords words) {
        long number = id.orElseThrow();
        opened.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                journal.say(number, words);
            }
            changed.run();
            return read(number);
        });
    }

    public void askSheet(Words words) {
        KeptTake take = opened.answer().value().orElseThrow().take();
        sheet.ask(() -> TakeSheet.png(List.of(subject(take, words)), sentences(words)));
    }

    /** Writes its sheet, in the form the file's name ends in. */
    public void saveSheet(Path to, Words words) {
        KeptTake take = opened.answer().value().orElseThrow().take();
        save(to, words, () -> List.of(subject(take, words)));
    }

    /** Writes a sheet for each instrument, of its newest take: a whole set for one stage. */
    public void saveSheetsOfAllInstruments(Path to, Words words) {
        save(to, words, () -> {
            try (Journal journal = Journal.open(file)) {
                List<TakeSheet.Subject> all = new ArrayList<>();
                for (String instrument : journal.instruments()) {
                    journal.list(TakeFilter.ALL.ofInstrument(instrument).atMost(1)).forEach(line -> all.add(subject(journal.take(line.id()), words)));
                }
                return all;
            }
        });
    }

    private void save(Path to, Words words, Callable<List<TakeSheet.Subject>> subjects) {
        saved.ask(() -> {
            byte[] content = content(to.getFileName().toString().toLowerCase(Locale.ROOT), subjects.call(), sentences(words));
            try {
                return Files.write(to, content);
            } catch (IOException problem) {
                throw new JournalProblem(words.say("journal.not-written", to), problem);
            }
        });
    }

    private static byte[] content(String name, List<TakeSheet.Subject> subjects, Sentences sentences) {
        if (name.endsWith(".pdf")) {
            return TakeSheet.pdf(subjects, sentences);
        }
        if (name.endsWith(".png")) {
            return TakeSheet.png(subjects, sentences);
        }
        return (name.endsWith(".svg") ? TakeSheet.svg(subjects, sentences) : TakeSheet.html(subjects, sentences)).getBytes(StandardCharsets.UTF_8);
    }

    private static TakeSheet.Subject subject(KeptTake take, Words words) {
        JournalWords said = new JournalWords(words);
        return new TakeSheet.Subject(said.title(take.line()), said.where(take.line()), take.line().note(), take.assessment(), take.rig());
    }

    private static Sentences sentences(Words words) {
        return Sentences.in(words.locale());
    }

    /** @param present how the player's controls stand now and what was learned of them; without controls only where they stood is told */
    public void askRecall(Optional<RigInUse> present) {
        Rig kept = opened.answer().value().flatMap(each -> each.take().rig()).filter(rig -> !rig.settings().isEmpty()).orElseThrow();
        recall.ask(() -> present.filter(inUse -> !inUse.rig().settings().isEmpty()).map(inUse -> Recall.of(kept, inUse)).orElseGet(() -> Recall.of(kept)));
    }
}
