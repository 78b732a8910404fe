package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.journal.Journal;
import evenwood.journal.JournalExport;
import evenwood.journal.JournalProblem;
import evenwood.journal.TakeToKeep;
import evenwood.journal.TakeWords;
import evenwood.rig.Rig;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Option;

/** Whether a take goes into the journal, and what is said about it there. */
final class KeepOptions {
    @Option(names = "--keep", description = "Keeps the take in the journal, with everything measured and said.")
    private boolean keep;

    @Option(names = "--venue", paramLabel = "WORDS", description = "With --keep: where it was played.")
    private String venue = "";

    @Option(names = "--note", paramLabel = "WORDS", description = "With --keep: anything worth remembering.")
    private String note = "";

    @Option(names = "--tag", paramLabel = "WORD", description = "With --keep: a word to find it by; may be given more than once.")
    private List<String> tags = List.of();

    @Option(names = "--keep-sound", description = "Keeps the take and its sound as well, as FLAC with all channels.")
    private boolean keepSound;

    boolean isWanted() {
        return keep || keepSound;
    }

    /** Refuses what makes no sense before anything is measured. */
    void check(boolean demo) {
        if (keepSound && demo) {
            throw new BadInput("check: --keep-sound is for a recording; the demo take sounds the same every time, keep it with --keep");
        }
    }

    /** Keeps it and says so; when the journal cannot, the take is laid aside as a file of its own. @return whether all that was asked for was kept */
    boolean keep(JournalPlace place, Assessment assessment, Optional<Rig> rig, String instrument, Terminal terminal) {
        TakeToKeep silent = new TakeToKeep(OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS), assessment, rig,
            new TakeWords(instrument, venue, note, tags));
        Optional<byte[]> sound = keepSound ? KeptSound.of(assessment.readings().take().name(), terminal) : Optional.empty();
        TakeToKeep take = sound.map(silent::withFlac).orElse(silent);
        try (Journal journal = place.open()) {
            terminal.note("Kept as take " + journal.keepNow(take) + " in " + journal.file());
            return sound.isPresent() == keepSound;
        } catch (JournalProblem problem) {
            terminal.note(problem.getMessage() + laidAside(take));
            return false;
        }
    }

    private static String laidAside(TakeToKeep take) {
        Path file = Path.of(System.getProperty("java.io.tmpdir"), "evenwood-take-" + take.uid() + ".json");
        try {
            JournalExport.write(take, file);
            return "; meanwhile the take was laid aside as " + file + ": evenwood journal import takes it in";
        } catch (JournalProblem noRoomThereEither) {
            return "";
        }
    }
}
