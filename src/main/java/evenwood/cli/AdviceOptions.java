package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.Coach;
import evenwood.coach.PeakAfter;
import evenwood.coach.RigAnswer;
import evenwood.coach.StoredMove;
import evenwood.eq.ControlLearning;
import evenwood.coach.PeakForecast;
import evenwood.eq.EqChain;
import evenwood.eq.EqualisedTake;
import evenwood.eq.RigInUse;
import evenwood.judge.MicrophoneRule;
import evenwood.judge.Statement;
import evenwood.judge.TargetWindow;
import evenwood.judge.ToneComparison;
import evenwood.measure.TakeReadings;
import evenwood.rig.ControlSet;
import evenwood.rig.Instrument;
import evenwood.rig.LearnedControl;
import evenwood.rig.LearnedFile;
import evenwood.rig.PickupColour;
import evenwood.rig.Presets;
import evenwood.rig.Tap;
import evenwood.sound.SoundSource;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Supplier;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What the player tells about the take, so that the advice fits: the instrument, the rig. */
final class AdviceOptions {
    @Option(names = "--instrument", paramLabel = "ID", description = "What was played; see evenwood presets list.")
    private String instrument;

    @Option(names = "--rig", paramLabel = "FILE", description = "Your rig: instrument, tap and where every control stands.")
    private Path rigFile;

    @Option(names = "--like", paramLabel = "TAKE",
        description = "A file or a kept take's number: it sounds as this one should, on the same instrument; another song in another key does no harm.")
    private String like;

    @Option(names = "--like-channel", paramLabel = "N", defaultValue = "1", description = "Which channel of that take to hear, counted from 1 (default: 1).")
    private int likeChannel;

    @Mixin
    private final JournalPlace journal = new JournalPlace();

    private Optional<WantedTake> wanted = Optional.empty();
    private Optional<Instrument> played = Optional.empty();
    private Optional<RigInUse> rig = Optional.empty();

    /** Reads what is named; before a long take is heard, so that a wrong word is told at once. */
    void prepare(Terminal terminal) {
        prepare(terminal, Optional.empty());
    }

    /** @param known the instrument of a take that tells it itself; what the player says goes first */
    void prepare(Terminal terminal, Optional<String> known) {
        Presets presets = Presets.ofPlayer();
        rig = Optional.ofNullable(rigFile).map(file -> RigInUse.read(file, presets));
        played = Optional.ofNullable(instrument).map(presets::instrument).or(() -> rig.map(each -> each.rig().instrument()))
            .or(() -> known.map(presets::instrument));
        wanted = Optional.ofNullable(like).map(path -> WantedTake.of("check --like", path, likeChannel, journal, terminal));
    }

    /** Which journal kept takes come from and go to. */
    JournalPlace journal() {
        return journal;
    }

    /** What was played, as the player named it; empty when it was not said. */
    String instrumentId() {
        return played.map(Instrument::id).orElse("");
    }

    Optional<RigInUse> rig() {
        return rig;
    }

    /**
     * What is wrong and what to turn.
     *
     * @param again opens the take once more, to measure how high its peaks get through the moves instead of guessing it
     */
    Assessment assess(TakeReadings readings, Supplier<SoundSource> again) {
        return assess(readings, change -> peakAfter(change, again));
    }

    /** What is wrong and what to turn, of a take that cannot be heard again: its peaks through the moves are forecast. */
    Assessment assess(TakeReadings readings) {
        return assess(readings, PeakForecast.fromSpectrum(readings));
    }

    private Assessment assess(TakeReadings readings, PeakForecast peak) {
        Assessment assessment = new Coach(TargetWindow.DEFAULT).assess(readings, wantedTone(readings), rig, peak)
            .withMissing(tapRemarks(readings));
        return wanted.map(take -> take.withMissing(assessment)).orElse(assessment);
    }

    /** The same, with every fault held against an earlier take. */
    Assessment comparedWith(Assessment now, TakeReadings before, OptionalDouble knownGainDb) {
        return new Coach(TargetWindow.DEFAULT).comparedWith(now, before, wantedTone(before), knownGainDb);
    }

    /** How the rig answered to the moves that were made; it is learned from at once. Nothing without a rig. */
    List<RigAnswer> answers(List<StoredMove> moves, TakeReadings before, TakeReadings now) {
        List<RigAnswer> answers = rig.map(each -> RigAnswer.of(moves, each, before, now)).orElse(List.of());
        for (RigAnswer answer : answers) {
            ControlSet controls = rig.orElseThrow().rig().controls();
            Optional<LearnedControl> known = LearnedFile.read(rigFile, controls).stream().filter(each -> each.control().equals(answer.control().name())).findFirst();
            ControlLearning.further(answer.control(), known, answer.heard()).filter(each -> !Optional.of(each).equals(known))
                .ifPresent(learned -> LearnedFile.keep(learned, rigFile, controls));
        }
        return answers;
    }

    private List<Statement> tapRemarks(TakeReadings readings) {
        return rig.map(each -> MicrophoneRule.remarks(readings, each.rig().tap(), each.rig().instrument().lowestHz())).orElse(List.of());
    }

    private Optional<ToneComparison> wantedTone(TakeReadings readings) {
        Tap tap = rig.map(each -> each.rig().tap()).orElse(Tap.PICKUP);
        Optional<PickupColour> colour = rig.flatMap(each -> each.rig().connection()).flatMap(each -> each.pickup().colour());
        return wanted.map(take -> take.comparison(readings)).or(() -> played.flatMap(each -> ToneComparison.withInstrument(readings, each, tap, colour)));
    }

    private static PeakAfter peakAfter(EqChain change, Supplier<SoundSource> again) {
        try (SoundSource source = again.get()) {
            return new PeakAfter(EqualisedTake.measure(source, change).truePeakDbtp(), 0);
        }
    }
}
