package evenwood.cli;

import evenwood.eq.ControlLearning;
import evenwood.measure.SineSweeps;
import evenwood.measure.SweepAnalysis;
import evenwood.measure.SweepReading;
import evenwood.report.LearnJson;
import evenwood.report.LearnText;
import evenwood.report.Sentences;
import evenwood.rig.Control;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.sound.AudioBlock;
import evenwood.sound.SoundSource;
import evenwood.sound.WavWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Learns what a control of the rig really does, and keeps it beside the rig. */
@Command(name = "learn", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = {"Learns what a control of your rig really does, and keeps it beside the rig file.",
        "From playing: one take each at two or more positions.",
        "Exactly: write the sweeps (--sweep -o FILE), send them through the box, record them back once a position (--sweep REC@POSITION)."})
final class LearnCommand implements Callable<Integer> {
    private static final int SAMPLE_RATE_HZ = 48_000;
    private static final double LONGEST_RECORDING_SECONDS = 600;

    @Parameters(index = "0", paramLabel = "CONTROL", description = "As it is named in the rig's control set, such as Bass.")
    private String name;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "TAKE@POSITION", description = "A take, and where the control stood: kitchen.wav@4.5, loud.wav@off.")
    private List<String> words = new ArrayList<>();

    @Option(names = "--rig", paramLabel = "FILE", description = "The rig the control is part of.")
    private Path rigFile;

    @Option(names = "--sweep", description = "With -o writes the sweeps; otherwise what is named are recordings of them.")
    private boolean sweep;

    @Option(names = {"-o", "--output"}, paramLabel = "FILE", description = "The sweep file to write: WAV, mono, 24 bits, 48 kHz.")
    private Path out;

    @Option(names = "--channel", paramLabel = "N", defaultValue = "1", description = "Which channel of the takes to hear, counted from 1 (default: 1).")
    private int channel;

    @Option(names = "--json", description = "What was learned as one JSON object (docs/learn.schema.json).")
    private boolean asJson;

    private final Terminal terminal;
    private final Sentences sentences = Sentences.english();

    LearnCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (out != null) {
            if (!sweep || !words.isEmpty()) {
                throw new BadInput("learn: -o writes the sweeps and nothing else; say evenwood learn " + name + " --sweep -o " + out);
            }
            writeSweeps();
            return ExitCode.DONE;
        }
        if (rigFile == null) {
            throw new BadInput("learn: name the rig that " + name + " is part of with --rig FILE, or write the sweeps with --sweep -o FILE");
        }
        Rig rig = Rig.read(rigFile, Presets.ofPlayer());
        Control control = rig.controls().control(name).orElseThrow(() -> new BadInput("learn: " + rigFile + " has no control " + name + ", but "
            + rig.controls().controls().stream().map(Control::name).collect(Collectors.joining(", "))));
        List<PlacedTake> takes = words.stream().map(word -> PlacedTake.of(word, control)).toList();
        if (takes.stream().map(PlacedTake::at).distinct().count() < 2) {
            throw new BadInput("learn: " + control.name() + " is needed at two positions at least, as in low.wav@0 high.wav@10");
        }
        List<ControlLearning.Swept> sweeps = sweep ? takes.stream().map(this::swept).toList() : List.of();
        LearnedControl learned = sweep ? ControlLearning.ofSweeps(control, sweeps) : ofTakes(control, takes);
        LearnedFile.keep(learned, rigFile, rig.controls());
        String kept = LearnedFile.beside(rigFile).toString();
        if (asJson) {
            terminal.line(LearnJson.of(rig.name(), learned, sweeps, kept));
        } else {
            LearnText.lines(learned, rig.instrument().lowestHz(), sentences).forEach(terminal::line);
            terminal.line(sentences.say("learn.kept", kept));
        }
        return ExitCode.DONE;
    }

    private LearnedControl ofTakes(Control control, List<PlacedTake> takes) {
        List<ControlLearning.Played> played = takes.stream()
            .map(take -> new ControlLearning.Played(take.at(), WantedTake.measure("learn", take.path(), channel, terminal).readings())).toList();
        return ControlLearning.ofTakes(control, played).orElseThrow(() -> new BadInput(
            "learn: the takes share too few notes to tell what " + control.name() + " does; play the same slow scale at each position"));
    }

    private ControlLearning.Swept swept(PlacedTake take) {
        try (SoundSource source = TakeArgument.open(take.path(), channel)) {
            SweepReading reading = SweepAnalysis.of(samples(source, take.path()), source.format().sampleRateHz()).orElseThrow(() -> new BadInput("learn: no sweep was found in "
                + take.path() + "; record the file that evenwood learn " + name + " --sweep -o FILE writes, from its beginning"));
            reading.levels().stream().filter(SweepReading.Level::isRecordingFull).findFirst().ifPresent(level -> terminal.note(
                sentences.say("learn.full", take.path(), level.sentDbfs())));
            if (!asJson) {
                harmonics(take, reading);
            }
            return new ControlLearning.Swept(take.at(), reading);
        }
    }

    private void harmonics(PlacedTake take, SweepReading reading) {
        if (reading.overloadHeardDbfs().isEmpty()) {
            terminal.line(sentences.say("learn.never-overloaded", take.at().say(), reading.levels().get(reading.levels().size() - 1).sentDbfs()));
        }
        for (SweepReading.Level level : reading.levels()) {
            terminal.line("  " + sentences.say("learn.distortion", level.sentDbfs(), level.heardPeakDbfs(), 100 * level.distortion()));
        }
    }

    private static float[] samples(SoundSource source, String path) {
        float[] all = new float[1 << 20];
        int filled = 0;
        AudioBlock block = new AudioBlock(AudioBlock.DEFAULT_FRAMES);
        for (int frames = source.read(block); frames >= 0; frames = source.read(block)) {
            if (filled + frames > LONGEST_RECORDING_SECONDS * source.format().sampleRateHz()) {
                throw new BadInput(String.format(Locale.ROOT, "learn: %s is longer than %.0f minutes; cut it to the sweeps, which take %.0f seconds",
                    path, LONGEST_RECORDING_SECONDS / 60, SineSweeps.wholeSeconds()));
            }
            if (filled + frames > all.length) {
                all = Arrays.copyOf(all, 2 * all.length);
            }
            System.arraycopy(block.samples(), 0, all, filled, frames);
            filled += frames;
        }
        return Arrays.copyOf(all, filled);
    }

    private void writeSweeps() {
        float[] samples = SineSweeps.samples(SAMPLE_RATE_HZ);
        try (WavWriter writer = WavWriter.createDithered(out, SAMPLE_RATE_HZ, WavWriter.Coding.INTEGER_24)) {
            writer.write(samples, samples.length);
        }
        terminal.line(sentences.say("learn.written", out.toString(), SineSweeps.wholeSeconds(), SineSweeps.COUNT, SineSweeps.levelDbfs(0),
            SineSweeps.levelDbfs(SineSweeps.COUNT - 1)));
        terminal.line(sentences.say("learn.caution"));
        terminal.line(sentences.say("learn.how", name));
    }
}
