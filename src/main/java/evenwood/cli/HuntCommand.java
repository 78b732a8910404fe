package evenwood.cli;

import evenwood.coach.hunt.EarthRefusal;
import evenwood.coach.hunt.HuntProgress;
import evenwood.coach.hunt.RigFacts;
import evenwood.report.HuntJson;
import evenwood.report.HuntPicture;
import evenwood.report.HuntText;
import evenwood.report.Sentences;
import evenwood.rig.HuntTable;
import evenwood.rig.Presets;
import evenwood.rig.Rig;
import evenwood.sound.LineOpener;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Hunts the cause of hum, buzz, hiss or tones: one change at a time, each measured before and after. */
@Command(name = "hunt", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Hunts the cause of hum, buzz, hiss or tones: one change at a time, each measured before and after.",
    footer = {"", "With recordings: the noise as it is first, then each trial by its name:",
        "  evenwood hunt --from noise.wav touch-strings=touched.wav ground-lift=lifted.wav",
        "A later before=FILE is what the trials behind it are compared to. Nobody plays in any of them.",
        "Ctrl-C ends it and tells what is known so far."})
final class HuntCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 100;

    @Option(names = "--rig", paramLabel = "FILE", description = "Your rig; trials it makes impossible are not offered.")
    private Path rigFile;

    @Mixin
    private final InputOptions input = new InputOptions();

    @Option(names = "--seconds", paramLabel = "N", defaultValue = "6", description = "How long each measurement listens (default: 6).")
    private double seconds;

    @Option(names = "--part", paramLabel = "PART", description = "What to hunt: hum, buzz, hiss or tone (default: what is noticed most).")
    private String part;

    @Option(names = "--from", arity = "1..*", paramLabel = "FILE", description = "Hunts in recordings instead of listening; see below.")
    private List<String> recordings;

    @Option(names = "--json", description = "Prints one JSON object at the end instead of words.")
    private boolean json;

    private final Terminal terminal;
    private final Sentences sentences;
    private final List<String> remarks = new ArrayList<>();

    HuntCommand(Terminal terminal) {
        this.terminal = terminal;
        sentences = terminal.sentences();
    }

    @Override
    public Integer call() {
        if (!(seconds >= 2 && seconds <= 60)) {
            throw new BadInput("hunt: --seconds " + seconds + ", but 2 to 60 are needed");
        }
        Presets presets = Presets.ofPlayer();
        Optional<Rig> rig = Optional.ofNullable(rigFile).map(file -> Rig.read(file, presets));
        Set<HuntTable.Need> facts = rig.map(RigFacts::of).orElse(RigFacts.ALL);
        HuntTable table = presets.hunt("noise");
        if (recordings != null) {
            tell(new HuntRecordings(table, facts, wanted(), input.channel(), remarks).hunt(recordings), rig);
            return ExitCode.DONE;
        }
        return listening(table, facts, rig);
    }

    private int listening(HuntTable table, Set<HuntTable.Need> facts, Optional<Rig> rig) {
        LineOpener opener = input.opener();
        try (Interruption interruption = new Interruption(); TypedLines typed = new TypedLines(terminal)) {
            HuntAsking asking = new HuntAsking(terminal, table, facts, wanted(), opener, seconds, json, remarks, interruption, typed);
            Optional<HuntProgress> progress = asking.hunt();
            if (interruption.isAsked()) {
                terminal.note("");
            }
            progress.ifPresent(known -> tell(known, rig));
            int code = asking.hasDeviceFailed() ? ExitCode.FAILED_MIDWAY : ExitCode.DONE;
            interruption.finish(code);
            return code;
        }
    }

    private void tell(HuntProgress progress, Optional<Rig> rig) {
        if (json) {
            terminal.raw(HuntJson.of(HuntPicture.of(progress, Sentences.english()), rig.map(Rig::name), remarks));
            return;
        }
        remarks.forEach(terminal::note);
        HuntText.lines(HuntPicture.of(progress, sentences), sentences, TEXT_WIDTH).forEach(terminal::line);
    }

    private Optional<HuntTable.Part> wanted() {
        if (part == null) {
            return Optional.empty();
        }
        for (HuntTable.Part each : HuntTable.Part.values()) {
            if (HuntText.word(each).equals(part.toLowerCase(Locale.ROOT))) {
                return Optional.of(each);
            }
        }
        throw new BadInput("hunt: --part " + part + ", but hum, buzz, hiss or tone is needed");
    }

    /** @throws BadInput for a trial nobody knows, and with an explanation for one that would part a mains earth */
    static String trial(HuntTable table, String words) {
        if (EarthRefusal.isMeant(words)) {
            throw new BadInput("hunt: " + Sentences.english().say("hunt.refused"));
        }
        return table.trial(words.strip().toLowerCase(Locale.ROOT).replace(' ', '-')).map(HuntTable.Trial::id).orElseThrow(() ->
            new BadInput("hunt: " + words + " is no trial; there are " + String.join(", ", table.trials().stream().map(HuntTable.Trial::id).toList())));
    }
}
