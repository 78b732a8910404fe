package evenwood.cli;

import evenwood.coach.Assessment;
import evenwood.live.LivePicture;
import evenwood.live.LiveState;
import evenwood.live.Listening;
import evenwood.report.CheckJson;
import evenwood.report.CheckText;
import evenwood.report.LiveLine;
import evenwood.report.Sentences;
import evenwood.sound.LineOpener;
import evenwood.sound.LiveInput;
import evenwood.sound.LiveInputs;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Live meters in the terminal, and the verdict at the end. */
@Command(name = "listen", mixinStandardHelpOptions = true, versionProvider = EvenwoodCommand.Version.class,
    description = "Listens to an input, shows what it hears and says at the end what to turn. Ctrl-C ends it.")
final class ListenCommand implements Callable<Integer> {
    private static final int TEXT_WIDTH = 100;
    private static final long REDRAW_NANOS = 100_000_000;
    private static final long LINE_NANOS = 1_000_000_000;

    @Mixin
    private final InputOptions input = new InputOptions();

    @Option(names = "--seconds", paramLabel = "N", description = "Ends by itself after so many seconds.")
    private Double seconds;

    @Option(names = "--json", description = "Prints one JSON line a second and the whole result as the last line.")
    private boolean json;

    @Option(names = "--list", description = "Shows the inputs and ends.")
    private boolean list;

    @Mixin
    private final AdviceOptions advice = new AdviceOptions();

    @Option(names = "--log", description = "Writes the sitting down in the journal: minutes, dynamics, loudness, tone; see evenwood journal practice.")
    private boolean log;

    private final Terminal terminal;
    private LiveState.Phase shownPhase = LiveState.Phase.RUNNING;
    private LiveState.Phase lastPhase = LiveState.Phase.RUNNING;
    private String lastMessage = "";

    ListenCommand(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public Integer call() {
        if (list) {
            return listInputs();
        }
        if (seconds != null && !(seconds > 0)) {
            throw new BadInput("listen: --seconds " + seconds + ", but more than 0 is needed");
        }
        advice.prepare(terminal);
        LineOpener opener = input.opener();
        try (Interruption interruption = new Interruption(); SittingLog sitting = SittingLog.open(log, advice);
             Listening listening = Listening.start(opener)) {
            watch(listening, interruption, sitting);
            LivePicture last = listening.stop();
            int code = tell(last);
            sitting.finish(last.readings(), terminal);
            code = terminal.ended(code);
            interruption.finish(code);
            return code;
        }
    }

    private int listInputs() {
        List<LiveInput> inputs = LiveInputs.list();
        for (LiveInput each : inputs) {
            terminal.line(each.name() + (each.description().isBlank() ? "" : "   " + each.description()));
        }
        if (inputs.isEmpty()) {
            throw new BadInput("listen: this machine offers no input; plug in an interface, or check a recording: evenwood check TAKE");
        }
        return ExitCode.DONE;
    }

    private void watch(Listening listening, Interruption interruption, SittingLog sitting) {
        long start = System.nanoTime();
        long between = terminal.isInteractive() && !json ? REDRAW_NANOS : LINE_NANOS;
        long limit = seconds == null ? Long.MAX_VALUE : Math.round(seconds * 1e9);
        long next = between;
        boolean first = true;
        while (true) {
            boolean asked = isAskedBefore(start + Math.min(limit, next), listening, interruption);
            long elapsed = System.nanoTime() - start;
            if (asked || elapsed >= limit || terminal.isLost()) {
                return;
            }
            if (elapsed >= next) {
                next += between;
            }
            LivePicture picture = listening.picture();
            show(picture, first);
            sitting.note(picture.readings());
            first = false;
            shownPhase = picture.state().phase();
            if (shownPhase == LiveState.Phase.STOPPED) {
                return;
            }
        }
    }

    /** Waits until the next line is due, or less: a device that is lost or back is told at once. */
    private boolean isAskedBefore(long due, Listening listening, Interruption interruption) {
        while (true) {
            long left = due - System.nanoTime();
            if (interruption.isAskedWithin(Math.min(left, REDRAW_NANOS))) {
                return true;
            }
            LiveState state = listening.picture().state();
            if (left <= REDRAW_NANOS || state.heardFrames() > 0 && state.phase() != shownPhase) {
                return false;
            }
        }
    }

    private void show(LivePicture picture, boolean first) {
        if (json) {
            terminal.raw(LiveLine.json(picture));
            return;
        }
        if (terminal.isInteractive()) {
            terminal.redraw(LiveLine.meters(picture, terminal.sentences(), TEXT_WIDTH), first);
        } else {
            terminal.line(LiveLine.text(picture, terminal.sentences()));
            noteChange(picture.state());
        }
    }

    /** Says once what happened to the device, not every second. */
    private void noteChange(LiveState state) {
        if (!state.message().equals(lastMessage) && !state.message().isEmpty()) {
            terminal.note(state.message());
        } else if (state.phase() == LiveState.Phase.RUNNING && lastPhase == LiveState.Phase.WAITING_FOR_DEVICE) {
            terminal.note("listen: the input is back; going on");
        }
        lastMessage = state.message();
        lastPhase = state.phase();
    }

    private int tell(LivePicture picture) {
        Assessment assessment = advice.assess(picture.readings());
        if (json) {
            terminal.raw(CheckJson.line(assessment, Sentences.english()));
        } else {
            terminal.line("");
            CheckText.lines(assessment, terminal.sentences(), TEXT_WIDTH).forEach(terminal::line);
        }
        if (picture.state().lostFrames() > 0) {
            terminal.note("listen: " + picture.state().lostFrames() + " frames were lost; everything else is kept");
        }
        if (picture.state().heardFrames() == 0) {
            terminal.note("listen: nothing came from the input; check that it is plugged in and switched on");
            return ExitCode.FAILED_MIDWAY;
        }
        return assessment.verdict().hasStrong() ? ExitCode.STRONG_FINDING : ExitCode.DONE;
    }
}
