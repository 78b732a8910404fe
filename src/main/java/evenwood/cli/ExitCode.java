package evenwood.cli;

/** What a command's exit code says; part of the stable contract. */
final class ExitCode {
    static final int DONE = 0;
    /** The take was measured and has a finding of severity strong. */
    static final int STRONG_FINDING = 1;
    /** Bad input or usage: one line on standard error. */
    static final int BAD_INPUT = 2;
    /** A device or file failed midway; what was measured so far is kept. */
    static final int FAILED_MIDWAY = 3;

    private ExitCode() { }
}
