package evenwood.cli;

import evenwood.coach.Recall;
import evenwood.eq.RigInUse;
import evenwood.journal.Journal;
import evenwood.journal.KeptTake;
import evenwood.report.RecallText;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Tonight as on that night. */
@Command(name = "recall", mixinStandardHelpOptions = true, description = "Sets the rig as on that night: a checklist of every control, on another rig by its sound.")
final class JournalRecallCommand implements Callable<Integer> {
    @Mixin
    private final JournalPlace place = new JournalPlace();

    @Parameters(paramLabel = "N", description = JournalCommand.TAKE_WORDS)
    private long id;

    @Option(names = "--rig", paramLabel = "FILE", description = "The rig as it stands now; it may have other controls.")
    private Path rigFile;

    @Option(names = "--json", description = JournalCommand.JSON_WORDS)
    private boolean json;

    private final Terminal terminal;

    JournalRecallCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        try (Journal journal = place.open()) {
            KeptTake take = journal.take(id);
            Rig kept = take.rig().orElseThrow(() -> new BadInput("journal recall: take " + id + " was kept without a rig, so nobody knows how its controls stood; "
                + "next time: evenwood check TAKE --rig FILE --keep. Its sound can be aimed at all the same: evenwood check TAKE --like " + id));
            Recall recall = rigFile == null ? Recall.of(kept) : Recall.of(kept, RigInUse.read(rigFile, Presets.ofPlayer()));
            if (json) {
                terminal.raw(RecallText.json(take.line(), recall));
            } else {
                RecallText.lines(take.line(), recall, terminal.sentences()).forEach(terminal::line);
            }
        }
        return ExitCode.DONE;
    }
}
