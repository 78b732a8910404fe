package evenwood.cli;

import evenwood.journal.Journal;
import evenwood.journal.JournalFile;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import picocli.CommandLine.Option;

/** Which journal is meant. */
final class JournalPlace {
    @Option(names = "--journal", paramLabel = "FILE", description = "Another journal than the usual one.")
    private String file;

    Path file() {
        return file == null ? JournalFile.usual() : path("journal", file);
    }

    Journal open() {
        return Journal.open(file());
    }

    static Path path(String command, String name) {
        try {
            return Path.of(name);
        } catch (InvalidPathException problem) {
            throw new BadInput(command + ": " + name + " is no possible file name; check the spelling");
        }
    }

    /** A day, or a day and a time of day; here and now's offset. */
    static OffsetDateTime time(String command, String text) {
        try {
            LocalDateTime local = text.contains("T") ? LocalDateTime.parse(text) : LocalDate.parse(text).atStartOfDay();
            return local.atZone(ZoneId.systemDefault()).toOffsetDateTime();
        } catch (DateTimeException problem) {
            throw new BadInput(command + ": " + text + ", but a day such as 2026-03-14 or a time such as 2026-03-14T20:15 is needed");
        }
    }
}
