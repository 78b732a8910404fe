package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.StoredMove;
import evenwood.eq.RigInUse;
import evenwood.judge.Statement;
import evenwood.live.WholeTake;
import evenwood.measure.TakeReadings;
import evenwood.report.CheckJson;
import evenwood.report.CheckText;
import evenwood.report.JournalText;
import evenwood.report.MovesFile;
import evenwood.report.Sentences;
import evenwood.report.TakeSheet;
import evenwood.sound.SoundFile;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Measures a recording and says what to turn. */
@Command(name = "check", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Measures a recording and says what to turn.")
final class CheckCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 100;

    @Mixin
    private final TakeArgument take = new TakeArgument();

    @Mixin
    private final AdviceOptions advice = new AdviceOptions();

    @Option(names = "--after", paramLabel = "OLD", description = "The take before: says of each fault whether it is better, the same or worse.")
    private String before;

    @Option(names = "--after-channel", paramLabel = "N", defaultValue = "1", description = "Which channel of that take to hear, counted from 1 (default: 1).")
    private int beforeChannel;

    @Option(names = "--moves", paramLabel = "FILE",
        description = "What was turned since then: what check --json printed for it, with only the moves that were made.")
    private Path moves;

    @Mixin
    private final KeepOptions keep = new KeepOptions();

    @Option(names = "--sheet", paramLabel = "FILE", description = "Also writes a sheet for the music stand: .html, .pdf, .png or .svg.")
    private String sheet;

    @Option(names = "--json", description = "Prints one JSON object instead of words.")
    private boolean json;

    private final Terminal terminal;

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        take.mustBeNamed("check");
        keep.check(take.isDemo());
        if (moves != null && before == null) {
            throw new BadInput("check: --moves says what was turned since an earlier take; name that with --after OLD");
        }
        if (sheet != null) {
            SheetFile.check("check", sheet);
        }
        advice.prepare(terminal, take.knownInstrument());
        Optional<TakeReadings> old = Optional.ofNullable(before).map(path -> WantedTake.heard("check --after", path, beforeChannel, advice.journal(), terminal));
        try (SoundSource source = take.open()) {
            try (ProgressBar progress = new ProgressBar(terminal)) {
                return tell(WholeTake.measure(source, progress::show), source, old);
            }
        }
    }

    private int tell(WholeTake whole, SoundSource source, Optional<TakeReadings> old) {
        Assessment alone = withFileRemarks(advice.assess(whole.readings(), take::open), source);
        Assessment assessment = old.map(before -> compared(alone, before)).orElse(alone);
        if (json) {
            terminal.raw(CheckJson.of(assessment, Sentences.english()));
        } else {
            CheckText.lines(assessment, terminal.sentences(), TEXT_WIDTH).forEach(terminal::line);
        }
        boolean kept = !keep.isWanted() || keep.keep(advice.journal(), assessment, advice.rig().map(RigInUse::rig), advice.instrumentId(), terminal);
        if (sheet != null) {
            SheetFile.write("check", sheet, List.of(new TakeSheet.Subject(advice.rig().map(each -> each.rig().name())
                .orElse(advice.instrumentId().isEmpty() ? source.name() : advice.instrumentId()), JournalText.now() + ", " + source.name(), "", assessment,
                advice.rig().map(RigInUse::rig))), terminal.sentences());
        }
        whole.failure().map(SoundProblem::getMessage).ifPresent(terminal::note);
        if (!kept) {
            return ExitCode.FAILED_MIDWAY;
        }
        return whole.failure().isPresent() ? ExitCode.of(whole.failure().get()) : assessment.verdict().hasStrong() ? ExitCode.STRONG_FINDING : ExitCode.DONE;
    }

    private Assessment compared(Assessment alone, TakeReadings old) {
        List<StoredMove> made = moves == null ? List.of() : MovesFile.read(moves);
        OptionalDouble gainDb = moves == null ? OptionalDouble.empty() : OptionalDouble.of(StoredMove.chain(made).gainDb());
        return advice.comparedWith(alone, old, gainDb).withAnswers(advice.answers(made, old, alone.readings()));
    }

    /** What only the file and the command line know and the player should hear about. */
    private static Assessment withFileRemarks(Assessment assessment, SoundSource source) {
        List<Statement> remarks = new ArrayList<>();
        if (assessment.verdict().tone().isEmpty() && assessment.readings().hasPlaying()) {
            remarks.add(Statement.of("missing.wanted-tone"));
        }
        if (!(source instanceof SoundFile file)) {
            return assessment.withMissing(remarks);
        }
        file.channelPeaks().farLouderChannel().ifPresent(louder ->
            remarks.add(Statement.of("missing.other-channel", file.format().channel(), louder)));
        if (file.replacedSamples() > 0) {
            remarks.add(Statement.of("missing.replaced-samples", file.replacedSamples()));
        }
        return assessment.withMissing(remarks);
    }
}
