package evenwood.cli;

import evenwood.sound.SoundProblem;

/** What a command's exit code says; part of the stable contract. */
final class ExitCode {
    static final int DONE = 0;
    /** The take was measured and has a finding of severity strong. */
    static final int STRONG_FINDING = 1;
    /** Bad input or usage: one line on standard error. What could be read of a damaged file is measured all the same. */
    static final int BAD_INPUT = 2;
    /** A device or file failed midway; what was measured so far is kept. */
    static final int FAILED_MIDWAY = 3;

    private ExitCode() { }

    /** A file that is cut short is bad input; only what works and then fails has failed midway. */
    static int of(SoundProblem problem) {
        return problem.isMidway() && !problem.isDamage() ? FAILED_MIDWAY : BAD_INPUT;
    }
}
