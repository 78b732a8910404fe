package evenwood.cli;

import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * Lets Ctrl-C end a command properly: the command is asked to finish, says its result, and the program ends with the
 * command's own exit code.
 */
final class Interruption implements AutoCloseable {
    private static final long PATIENCE_SECONDS = 10;

    private final CountDownLatch asked = new CountDownLatch(1);
    private final CountDownLatch finished = new CountDownLatch(1);
    private final Thread hook = new Thread(this::askAndWait, "interruption");
    private volatile int code;

    Interruption() {
        Runtime.getRuntime().addShutdownHook(hook);
    }

    /** Waits so long, or until the player wants to end; true if so. */
    boolean isAskedWithin(long nanos) {
        try {
            return asked.await(Math.max(0, nanos), TimeUnit.NANOSECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
            return true;
        }
    }

    boolean isAsked() {
        return asked.getCount() == 0;
    }

    /** All is said; a pending Ctrl-C ends the program with this code. */
    void finish(int exitCode) {
        code = exitCode;
        finished.countDown();
    }

    private void askAndWait() {
        asked.countDown();
        try {
            if (finished.await(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                System.out.flush();
                Runtime.getRuntime().halt(code);
            }
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyEnding) {
            // Ctrl-C came; the hook ends the program once finish() was called.
        }
    }
}
