package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.PeakAfter;
import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.eq.RigInUse;
import evenwood.judge.Statement;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.live.WholeTake;
import evenwood.report.CheckJson;
import evenwood.report.CheckText;
import evenwood.report.Sentences;
import evenwood.rig.Instrument;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.rig.Tap;
import evenwood.sound.DemoPerformer;
import evenwood.sound.DemoScenario;
import evenwood.sound.SoundFile;
import evenwood.sound.SoundFiles;
import evenwood.sound.SoundProblem;
import evenwood.sound.SoundSource;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Measures a recording and says what to turn. */
@Command(name = "check", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Measures a recording and says what to turn.")
final class CheckCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 100;
    private static final int DEMO_SAMPLE_RATE_HZ = 48_000;
    private static final long DEMO_SEED = 1;

    @Parameters(index = "0", arity = "0..1", paramLabel = "TAKE",
        description = "WAV, AIFF, FLAC, Ogg Vorbis or MP3; 8 to 192 kHz.")
    private String take;

    @Option(names = "--demo", description = "Checks the demo take: an invented octave mandolin in a kitchen.")
    private boolean demo;

    @Option(names = "--channel", paramLabel = "N", description = "Which channel to hear, counted from 1 (default: 1).")
    private int channel;

    @Option(names = "--instrument", paramLabel = "ID", description = "What was played; see evenwood presets list.")
    private String instrument;

    @Option(names = "--rig", paramLabel = "FILE", description = "Your rig: instrument, tap and where every control stands.")
    private Path rigFile;

    @Option(names = "--json", description = "Prints one JSON object instead of words.")
    private boolean json;

    private final Terminal terminal;
    private Optional<RigInUse> rig = Optional.empty();

    CheckCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if ((take == null) != demo) {
            throw new BadInput("check: name one take, or --demo; see evenwood check --help");
        }
        checkInstrument();
        rig = Optional.ofNullable(rigFile).map(file -> RigInUse.nominal(Rig.read(file, Presets.ofPlayer())));
        try (SoundSource source = open()) {
            try (ProgressBar progress = new ProgressBar(terminal)) {
                return tell(WholeTake.measure(source, progress::show), source);
            }
        }
    }

    private int tell(WholeTake whole, SoundSource source) {
        Assessment assessment = withFileRemarks(new Coach(TargetWindow.DEFAULT).assess(whole.readings(), wantedTone(whole), rig,
            change -> new PeakAfter(equalised(change).truePeakDbtp(), 0)), source);
        if (json) {
            terminal.raw(CheckJson.of(assessment, Sentences.english()));
        } else {
            CheckText.lines(assessment, Sentences.english(), TEXT_WIDTH).forEach(terminal::line);
        }
        Optional<String> trouble = whole.failure().map(SoundProblem::getMessage).or(() -> cutShort(source));
        if (trouble.isPresent()) {
            terminal.note(trouble.get());
            return ExitCode.FAILED_MIDWAY;
        }
        return assessment.verdict().hasStrong() ? ExitCode.STRONG_FINDING : ExitCode.DONE;
    }

    private static Optional<String> cutShort(SoundSource source) {
        if (!(source instanceof SoundFile file) || file.missingFrames() == 0) {
            return Optional.empty();
        }
        double missingSeconds = (double) file.missingFrames() / file.format().sampleRateHz();
        return Optional.of(String.format(Locale.ROOT,
            "%s: the file ends %.1f s before its header says; what is there was measured; copy or record it again", file.name(), missingSeconds));
    }

    private Optional<ToneComparison> wantedTone(WholeTake whole) {
        Optional<Instrument> played = Optional.ofNullable(instrument).map(id -> Presets.ofPlayer().instrument(id))
            .or(() -> rig.map(each -> each.rig().instrument()));
        Tap tap = rig.map(each -> each.rig().tap()).orElse(Tap.PICKUP);
        return played.flatMap(each -> ToneComparison.withInstrument(whole.readings(), each, tap));
    }

    /** The take once more, through the moves: how high its peaks get is then measured and not guessed. */
    private EqualisedTake equalised(EqChain change) {
        try (SoundSource again = open()) {
            return EqualisedTake.measure(again, change);
        }
    }

    private void checkInstrument() {
        if (instrument != null) {
            Presets.ofPlayer().instrument(instrument);
        }
    }

    private SoundSource open() {
        if (demo) {
            return new DemoPerformer(DEMO_SAMPLE_RATE_HZ, DEMO_SEED, DemoScenario.kitchen());
        }
        try {
            return SoundFiles.open(Path.of(take), channel);
        } catch (InvalidPathException problem) {
            throw new BadInput("check: " + take + " is no possible file name; check the spelling");
        }
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
