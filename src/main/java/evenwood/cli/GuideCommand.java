package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.coach.GuidedCheck;
import evenwood.coach.GuidedCheck.Progress;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.live.Listening;
import evenwood.measure.TakeReadings;
import evenwood.report.CheckJson;
import evenwood.report.CheckText;
import evenwood.report.GuideLine;
import evenwood.report.Sentences;
import evenwood.sound.LineOpener;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The guided check: quiet, soft, hard, play; then what to turn. */
@Command(name = "guide", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Asks for quiet, soft, hard and usual playing, goes on when enough was heard, and says what to turn.",
    footer = {"", "While it runs, type a letter and Enter: p pauses and goes on, r redoes this step, b goes back one, s goes on",
        "without waiting for more, e ends. Ctrl-C ends too; what was heard is kept and judged."})
final class GuideCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 100;
    private static final long LOOK_NANOS = 100_000_000;
    private static final long LINE_NANOS = 1_000_000_000;

    @Mixin
    private final InputOptions input = new InputOptions();

    @Option(names = "--json", description = "Prints one JSON line a second and the whole result as the last line.")
    private boolean json;

    @Mixin
    private final AdviceOptions advice = new AdviceOptions();

    private final Terminal terminal;
    private GuidedCheck guided = new GuidedCheck();
    private Optional<TakeReadings> before = Optional.empty();
    private String lastMessage = "";

    GuideCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        advice.prepare(terminal);
        LineOpener opener = input.opener();
        try (Interruption interruption = new Interruption(); TypedLetters typed = new TypedLetters(terminal)) {
            int code = ExitCode.DONE;
            for (boolean again = true; again; again = wantsAnotherRound(interruption, typed)) {
                code = round(opener, interruption, typed);
            }
            code = terminal.ended(code);
            interruption.finish(code);
            return code;
        }
    }

    private int round(LineOpener opener, Interruption interruption, TypedLetters typed) {
        try (Listening listening = Listening.start(opener)) {
            guided = new GuidedCheck();
            lead(listening, interruption, typed);
            return tell(listening.stop());
        }
    }

    /** Only a person at a terminal turns knobs and plays again. */
    private boolean wantsAnotherRound(Interruption interruption, TypedLetters typed) {
        if (!terminal.isInteractive() || json || before.isEmpty()) {
            return false;
        }
        terminal.line("");
        terminal.line(terminal.strong(terminal.sentences().say("guide.again")));
        while (!interruption.isAskedWithin(LOOK_NANOS)) {
            Optional<Character> letter = typed.next();
            if (letter.isPresent()) {
                return letter.get() == TypedLetters.ENTER;
            }
        }
        return false;
    }

    private void lead(Listening listening, Interruption interruption, TypedLetters typed) {
        long nextLine = System.nanoTime();
        boolean first = true;
        GuidedCheck.Step shown = null;
        while (!interruption.isAskedWithin(LOOK_NANOS)) {
            Optional<Character> letter = typed.next();
            if (letter.isPresent() && letter.get() == 'e' || terminal.isLost()) {
                return;
            }
            letter.ifPresent(this::obey);
            letter.ifPresent(each -> terminal.eraseTypedLine());
            LivePicture picture = listening.picture();
            Progress progress = guided.hear(picture.readings());
            if (terminal.isInteractive() && !json) {
                terminal.redraw(GuideLine.lines(picture, progress, terminal.sentences(), TEXT_WIDTH), first);
                first = false;
            } else if (System.nanoTime() >= nextLine || progress.step() != shown) {
                line(picture, progress);
                nextLine += LINE_NANOS;
            }
            shown = progress.step();
            if (progress.step() == GuidedCheck.Step.DONE || picture.state().phase() == LiveState.Phase.STOPPED) {
                return;
            }
        }
    }

    private void obey(char letter) {
        switch (letter) {
            case 'p' -> pauseOrGoOn();
            case 'r' -> guided.redo(guided.step());
            case 'b' -> guided.redo(GuidedCheck.Step.values()[Math.max(0, guided.step().ordinal() - 1)]);
            case 's' -> guided.skip();
            case TypedLetters.ENTER -> { }
            default -> terminal.note("guide: " + letter + " means nothing here; p pauses, r redoes this step, b goes back, s goes on, e ends");
        }
    }

    private void pauseOrGoOn() {
        if (guided.isPaused()) {
            guided.resume();
        } else {
            guided.pause();
        }
    }

    private void line(LivePicture picture, Progress progress) {
        if (json) {
            terminal.raw(GuideLine.json(picture, progress, Sentences.english()));
            return;
        }
        terminal.line(GuideLine.text(progress, terminal.sentences()));
        if (!picture.state().message().equals(lastMessage) && !picture.state().message().isEmpty()) {
            terminal.note(picture.state().message());
        }
        lastMessage = picture.state().message();
    }

    private int tell(LivePicture picture) {
        Assessment alone = advice.assess(picture.readings());
        Assessment assessment = before.map(older -> advice.comparedWith(alone, older, OptionalDouble.empty())).orElse(alone);
        before = picture.readings().hasPlaying() ? Optional.of(picture.readings()) : before;
        if (json) {
            terminal.raw(CheckJson.line(assessment, Sentences.english()));
        } else {
            terminal.line("");
            CheckText.lines(assessment, terminal.sentences(), TEXT_WIDTH).forEach(terminal::line);
        }
        if (picture.state().heardFrames() == 0) {
            terminal.note("guide: nothing came from the input; check that it is plugged in and switched on");
            return ExitCode.FAILED_MIDWAY;
        }
        return assessment.verdict().hasStrong() ? ExitCode.STRONG_FINDING : ExitCode.DONE;
    }
}
