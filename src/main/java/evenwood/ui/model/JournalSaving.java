package evenwood.ui.model;

import evenwood.journal.ExportSteps;
import evenwood.journal.Journal;
import evenwood.journal.JournalExport;
import evenwood.journal.JournalProblem;
import evenwood.journal.JournalTable;
import evenwood.journal.TakeFilter;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.Locale;
import java.util.concurrent.CancellationException;

/**
 * The whole journal written to a file, and read from one, beside the screen. The file is there when it is whole and not before; broken
 * off, none is left.
 *
 * <p>Thread: the screen's; how far it is may be read by any.
 */
public final class JournalSaving {
    private static final String UNFINISHED = ".unfinished";

    private final Path file;
    private final Later<Path> written = new Later<>("evenwood-journal-export");
    private final Later<Integer> read = new Later<>("evenwood-journal-import");
    private volatile double part;
    /** The writing that is wanted; one that finds another here breaks off. */
    private volatile Object wanted;

    JournalSaving(Path file) {
        this.file = file;
    }

    /** The file written last. */
    public Later<Path> written() {
        return written;
    }

    /** How much is done, 0 to 1. */
    public double part() {
        return part;
    }

    /** @param to ends in {@code .csv} for a table, otherwise JSON  @param withSound kept sound goes along in JSON */
    public void write(Path to, boolean withSound, Words words) {
        Object mine = new Object();
        part = 0;
        wanted = mine;
        written.drop();
        written.ask(() -> {
            Path unfinished = to.resolveSibling(to.getFileName() + UNFINISHED);
            try (Journal journal = Journal.open(file)) {
                ExportSteps steps = (done, all) -> step(mine, (double) done / all);
                if (to.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".csv")) {
                    JournalTable.write(journal, TakeFilter.ALL, unfinished, steps);
                } else {
                    JournalExport.write(journal, TakeFilter.ALL, withSound, unfinished, steps);
                }
                return Files.move(unfinished, to, StandardCopyOption.REPLACE_EXISTING);
            } catch (IOException problem) {
                throw new JournalProblem(words.say("journal.not-written", to), problem);
            } finally {
                Files.deleteIfExists(unfinished);
            }
        });
    }

    /** Takes in what another journal wrote; what is there already stays as it is. */
    public void read(Path from) {
        read.ask(() -> {
            try (Journal journal = Journal.open(file)) {
                return JournalExport.read(from, journal);
            }
        });
    }

    /** How many takes were new when a file was read last. */
    public Later<Integer> read() {
        return read;
    }

    /** No more is wanted; returns at once. */
    public void cancel() {
        wanted = null;
        written.drop();
    }

    private void step(Object mine, double done) {
        if (wanted != mine) {
            throw new CancellationException();
        }
        part = done;
    }
}
