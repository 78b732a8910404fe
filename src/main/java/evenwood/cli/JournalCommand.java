package evenwood.cli;

import evenwood.journal.Backup;
import evenwood.journal.Event;
import evenwood.journal.EventKind;
import evenwood.journal.Journal;
import evenwood.journal.JournalExport;
import evenwood.journal.JournalTable;
import evenwood.journal.KeptTake;
import evenwood.journal.PracticeDays;
import evenwood.journal.TakeComparison;
import evenwood.journal.TakeFilter;
import evenwood.journal.TakeLine;
import evenwood.journal.TakeWords;
import evenwood.report.CheckText;
import evenwood.report.JournalJson;
import evenwood.report.JournalText;
import evenwood.report.Sentences;
import evenwood.report.TrendJson;
import evenwood.report.TrendText;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Everything about kept takes; each part is a few lines around the journal. */
@Command(name = "journal", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Finds, shows, compares and repeats what was kept with check --keep.", synopsisSubcommandLabel = "COMMAND")
final class JournalCommand implements Runnable {
    private static final int TEXT_WIDTH = 100;
    private static final int USUAL_LINES = 40;
    static final String JSON_WORDS = "Prints one JSON object instead of words.";
    static final String TAKE_WORDS = "The take's number in journal list.";

    private final Terminal terminal;
    private final JournalText text;

    JournalCommand(Terminal terminal) {
        this.terminal = terminal;
        text = new JournalText(terminal.sentences());
    }

    /** With those parts that are commands of their own. */
    static CommandLine of(Terminal terminal) {
        return new CommandLine(new JournalCommand(terminal)).addSubcommand(new JournalTrendCommand(terminal)).addSubcommand(new JournalRecallCommand(terminal));
    }

    @Override
    public void run() {
        throw new BadInput("journal: say what to do, such as list, show or trend; see evenwood journal --help");
    }

    @Command(name = "list", mixinStandardHelpOptions = true, description = "Lists kept takes, newest first.")
    int list(@Mixin JournalPlace place, @Mixin TakeChoice choice,
             @Option(names = "--most", paramLabel = "N", description = "So many at most (default: ${DEFAULT-VALUE}).", defaultValue = "" + USUAL_LINES) int most,
             @Option(names = "--json", description = JSON_WORDS) boolean json) {
        try (Journal journal = place.open()) {
            List<TakeLine> takes = journal.list(choice.filter().atMost(most == Integer.MAX_VALUE ? most : most + 1));
            List<TakeLine> shown = takes.subList(0, Math.min(most, takes.size()));
            if (json) {
                terminal.raw(JournalJson.list(shown));
                return ExitCode.DONE;
            }
            shown.forEach(take -> terminal.line(text.line(take)));
            if (takes.isEmpty()) {
                terminal.note("journal: nothing is kept" + (choice.filter().equals(TakeFilter.ALL) ? " yet; evenwood check TAKE --keep does" : " that fits"));
            } else if (takes.size() > most) {
                terminal.note("journal: older ones are not shown; --most N shows more");
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "show", mixinStandardHelpOptions = true, description = "Shows a kept take as it was found that day; with --sheet also several, a page each.")
    int show(@Mixin JournalPlace place, @Parameters(paramLabel = "N", arity = "1..*", description = TAKE_WORDS) List<Long> ids,
             @Option(names = "--sheet", paramLabel = "FILE", description = "Writes it as a sheet for the music stand: .html, .pdf, .png or .svg.") String sheet,
             @Option(names = "--sound", paramLabel = "FILE", description = "Writes the kept sound to a .flac file.") String sound,
             @Option(names = "--json", description = JSON_WORDS) boolean json) {
        if (sheet == null && ids.size() > 1) {
            throw new BadInput("journal show: name one take; several are for --sheet FILE.pdf, or journal compare");
        }
        try (Journal journal = place.open()) {
            if (sound != null) {
                KeptSound.write(journal, ids.get(0), sound);
                return ExitCode.DONE;
            }
            if (sheet != null) {
                SheetFile.write("journal show", sheet, ids.stream().map(journal::take).map(take -> SheetFile.of(take, terminal.sentences())).toList(), terminal.sentences());
                return ExitCode.DONE;
            }
            KeptTake take = journal.take(ids.get(0));
            List<Event> events = journal.events().stream().filter(event -> event.concerns(take.line())).toList();
            if (json) {
                terminal.raw(JournalJson.show(take, events, Sentences.english()));
            } else {
                text.head(take, events).forEach(terminal::line);
                CheckText.lines(take.assessment(), terminal.sentences(), TEXT_WIDTH).forEach(terminal::line);
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "compare", mixinStandardHelpOptions = true, description = "Two kept takes side by side: what differs and whether it is real.")
    int compare(@Mixin JournalPlace place, @Parameters(index = "0", paramLabel = "BEFORE", description = TAKE_WORDS) long before,
                @Parameters(index = "1", paramLabel = "AFTER", description = "The other one's.") long after, @Option(names = "--json", description = JSON_WORDS) boolean json) {
        try (Journal journal = place.open()) {
            TakeComparison both = journal.compare(before, after);
            if (json) {
                terminal.raw(TrendJson.of(both));
            } else {
                new TrendText(terminal.sentences()).lines(both).forEach(terminal::line);
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "note", mixinStandardHelpOptions = true, description = "Says something about a kept take; only what is named is changed.")
    int note(@Mixin JournalPlace place, @Parameters(index = "0", paramLabel = "N", description = TAKE_WORDS) long id,
             @Parameters(index = "1..*", arity = "0..*", paramLabel = "WORDS", description = "The new note.") List<String> words,
             @Option(names = "--venue", paramLabel = "WORDS", description = "Where it was played.") String venue,
             @Option(names = "--instrument", paramLabel = "NAME", description = "What was played.") String instrument,
             @Option(names = "--tag", paramLabel = "WORD", description = "A tag more; may be given more than once.") List<String> more,
             @Option(names = "--untag", paramLabel = "WORD", description = "A tag less.") List<String> fewer) {
        try (Journal journal = place.open()) {
            TakeLine line = journal.take(id).line();
            List<String> tags = new ArrayList<>(line.tags());
            tags.addAll(more == null ? List.of() : more);
            tags.removeAll(fewer == null ? List.of() : fewer.stream().map(tag -> tag.toLowerCase(Locale.ROOT)).toList());
            journal.say(id, new TakeWords(instrument == null ? line.instrument() : instrument, venue == null ? line.venue() : venue,
                words == null || words.isEmpty() ? line.note() : String.join(" ", words), tags));
            terminal.line(text.line(journal.take(id).line()));
        }
        return ExitCode.DONE;
    }

    @Command(name = "event", mixinStandardHelpOptions = true, description = "Marks new strings, a new battery and the like; without KIND lists them.")
    int event(@Mixin JournalPlace place, @Parameters(index = "0", arity = "0..1", paramLabel = "KIND",
                  description = "new-strings, new-battery, pickup-moved, new-pickup, new-cable, repair or other.") String kind,
              @Option(names = "--at", paramLabel = "DAY", description = "When (default: now).") String at,
              @Option(names = "--instrument", paramLabel = "NAME", description = "On which instrument or rig (default: all).") String instrument,
              @Option(names = "--note", paramLabel = "WORDS", description = "Anything worth remembering.") String note,
              @Option(names = "--json", description = JSON_WORDS) boolean json) {
        try (Journal journal = place.open()) {
            if (kind != null) {
                EventKind known = EventKind.ofId(kind).orElseThrow(() -> new BadInput("journal event: " + kind + ", but one of these is needed: "
                    + Arrays.stream(EventKind.values()).map(EventKind::id).collect(Collectors.joining(", "))));
                OffsetDateTime when = at == null ? OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS) : JournalPlace.time("journal event", at);
                journal.addNow(new Event(UUID.randomUUID().toString(), when, known, instrument == null ? "" : instrument, note == null ? "" : note));
            }
            if (json) {
                terminal.raw(JournalJson.events(journal.events()));
            } else {
                journal.events().forEach(event -> terminal.line(text.line(event)));
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "practice", mixinStandardHelpOptions = true, description = "Lists what listen --log wrote down.")
    int practice(@Mixin JournalPlace place, @Option(names = "--json", description = JSON_WORDS) boolean json) {
        try (Journal journal = place.open()) {
            PracticeDays days = PracticeDays.of(journal.practice(), LocalDate.now());
            if (json) {
                terminal.raw(JournalJson.practice(journal.practice()));
            } else {
                journal.practice().forEach(sitting -> terminal.line(text.line(sitting, journal.practice())));
                terminal.line(terminal.sentences().say("journal.practice-days", days.minutes(), days.days(), PracticeDays.SPAN_DAYS, days.streakDays()));
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "export", mixinStandardHelpOptions = true, description = "Writes kept takes to FILE: .json for everything, .csv for a spreadsheet.")
    int export(@Mixin JournalPlace place, @Mixin TakeChoice choice, @Parameters(paramLabel = "FILE", description = "Ends in .json or .csv.") String file,
               @Option(names = "--sound", description = "Kept sound goes along (.json only).") boolean sound) {
        Path path = JournalPlace.path("journal export", file);
        String name = file.toLowerCase(Locale.ROOT);
        if (!name.endsWith(".json") && !name.endsWith(".csv")) {
            throw new BadInput("journal export: " + file + ", but a name ending in .json or .csv is needed");
        }
        try (Journal journal = place.open()) {
            if (name.endsWith(".csv")) {
                JournalTable.write(journal, choice.filter(), path);
            } else {
                JournalExport.write(journal, choice.filter(), sound, path);
            }
        }
        return ExitCode.DONE;
    }

    @Command(name = "import", mixinStandardHelpOptions = true, description = "Takes in what journal export wrote; what is there already stays as it is.")
    int importAll(@Mixin JournalPlace place, @Parameters(paramLabel = "FILE", description = "A .json file of journal export.") String file) {
        try (Journal journal = place.open()) {
            int added = JournalExport.read(JournalPlace.path("journal import", file), journal);
            terminal.line(added + (added == 1 ? " take was new." : " takes were new."));
        }
        return ExitCode.DONE;
    }

    @Command(name = "backup", mixinStandardHelpOptions = true, description = "Copies the whole journal to FILE, also while it is in use.")
    int backup(@Mixin JournalPlace place, @Parameters(paramLabel = "FILE", description = "A new file.") String file,
               @Option(names = "--salvage", description = "From a damaged journal: what can still be read.") boolean salvage) {
        Path copy = JournalPlace.path("journal backup", file);
        if (salvage) {
            terminal.line(Backup.salvage(place.file(), copy) + " takes were saved in " + copy + ".");
            return ExitCode.DONE;
        }
        try (Journal journal = place.open()) {
            Backup.write(journal, copy);
        }
        terminal.line("The journal was copied to " + copy + ".");
        return ExitCode.DONE;
    }

    @Command(name = "restore", mixinStandardHelpOptions = true, description = "Goes back to a backup; what was there before is laid aside.")
    int restore(@Mixin JournalPlace place, @Parameters(paramLabel = "FILE", description = "What journal backup wrote.") String file) {
        Optional<Path> aside = Backup.restore(JournalPlace.path("journal restore", file), place.file());
        terminal.line("The journal is as in " + file + "." + aside.map(path -> " What was there before lies in " + path + ".").orElse(""));
        return ExitCode.DONE;
    }
}
