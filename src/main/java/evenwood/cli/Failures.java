package evenwood.cli;

import evenwood.journal.JournalProblem;
import evenwood.report.MovesFile;
import evenwood.rig.PresetProblem;
import evenwood.sound.SoundProblem;
import java.util.List;
import java.util.stream.Collectors;
import picocli.CommandLine;

/**
 * The one place where something that went wrong becomes a line for the player and an exit code.
 *
 * <p>A player's mistake never shows a stack trace. A mistake of ours shows a short code made from the stack, so that two
 * reports of the same mistake can be recognised, and the stack itself only with {@code -Devenwood.trace=true}.
 */
final class Failures implements CommandLine.IParameterExceptionHandler, CommandLine.IExecutionExceptionHandler {
    private final Terminal terminal;

    Failures(Terminal terminal) {
        this.terminal = terminal;
    }

    @Override
    public int handleParseException(CommandLine.ParameterException problem, String[] args) {
        String command = problem.getCommandLine().getCommandSpec().qualifiedName();
        terminal.note(oneLine(problem.getMessage()) + nearMatches(problem) + "; see " + command + " --help");
        return ExitCode.BAD_INPUT;
    }

    @Override
    public int handleExecutionException(Exception problem, CommandLine commandLine, CommandLine.ParseResult parsed) {
        if (problem instanceof SoundProblem sound) {
            terminal.note(sound.getMessage());
            return ExitCode.of(sound);
        }
        if (problem instanceof BrokenOff || problem instanceof JournalProblem journal && journal.isMidway()) {
            terminal.note(problem.getMessage());
            return ExitCode.FAILED_MIDWAY;
        }
        if (problem instanceof BadInput || problem instanceof JournalProblem || problem instanceof PresetProblem || problem instanceof MovesFile.BadMoves) {
            terminal.note(problem.getMessage());
            return ExitCode.BAD_INPUT;
        }
        terminal.note("evenwood stumbled over a mistake of its own, code " + code(problem) + " ("
            + oneLine(String.valueOf(problem)) + "); please report this line");
        if (Boolean.getBoolean("evenwood.trace")) {
            problem.printStackTrace();
        }
        return ExitCode.FAILED_MIDWAY;
    }

    private static String nearMatches(CommandLine.ParameterException problem) {
        if (!(problem instanceof CommandLine.UnmatchedArgumentException unmatched)) {
            return "";
        }
        List<String> near = unmatched.getSuggestions();
        return near.isEmpty() ? "" : "; did you mean " + near.stream().limit(3).collect(Collectors.joining(" or ")) + "?";
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s*\\R\\s*", " ").strip();
    }

    private static String code(Throwable problem) {
        int hash = problem.getClass().getName().hashCode();
        for (StackTraceElement element : problem.getStackTrace()) {
            hash = 31 * hash + element.getMethodName().hashCode();
        }
        return String.format("%06X", hash & 0xFFFFFF);
    }
}
