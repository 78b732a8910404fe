package evenwood.cli;

import evenwood.journal.Journal;
import evenwood.journal.Reading;
import evenwood.journal.Suspicion;
import evenwood.journal.Trend;
import evenwood.report.Sentences;
import evenwood.report.TrendJson;
import evenwood.report.TrendText;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A reading over months, or what the takes say of the gear. */
@Command(name = "trend", mixinStandardHelpOptions = true,
    description = "A reading over time; without READING what the takes say about strings, battery and channel.")
final class JournalTrendCommand implements Callable<Integer> {
    @Mixin
    private final JournalPlace place = new JournalPlace();

    @Mixin
    private final TakeChoice choice = new TakeChoice();

    @Parameters(arity = "0..1", paramLabel = "READING", description = "A name as in check --json: highDb, hissDbfs, truePeakDbtp; trebleDb, outputDb; band4000Db.")
    private String name;

    @Option(names = "--json", description = JournalCommand.JSON_WORDS)
    private boolean json;

    private final Terminal terminal;

    JournalTrendCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        Optional<Reading> reading = Optional.ofNullable(name).map(JournalTrendCommand::reading);
        try (Journal journal = place.open()) {
            if (reading.isPresent()) {
                tell(journal.trend(reading.get(), choice.filter()));
            } else {
                tell(journal.suspicions(choice.filter()));
            }
        }
        return ExitCode.DONE;
    }

    private static Reading reading(String name) {
        return Reading.named(name).orElseThrow(() -> new BadInput("journal trend: " + name + ", but one of these is needed: "
            + Reading.ALL.stream().map(Reading::name).filter(each -> !each.startsWith("band")).collect(Collectors.joining(", ")) + ", band50Db to band16000Db"));
    }

    private void tell(Trend trend) {
        if (json) {
            terminal.raw(TrendJson.of(trend));
        } else {
            new TrendText(terminal.sentences()).lines(trend).forEach(terminal::line);
        }
    }

    private void tell(List<Suspicion> suspicions) {
        if (json) {
            terminal.raw(TrendJson.of(suspicions, Sentences.english()));
        } else if (suspicions.isEmpty()) {
            terminal.line(terminal.sentences().say("journal.nothing-suspected"));
        } else {
            TrendText words = new TrendText(terminal.sentences());
            suspicions.forEach(suspicion -> terminal.line(words.line(suspicion)));
        }
    }
}
