package evenwood.ui.model;

import evenwood.journal.JournalProblem;
import evenwood.rig.PresetProblem;
import evenwood.sound.SoundProblem;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Something that takes its time, worked out beside the screen: the newest question counts, answers to older ones are dropped.
 *
 * <p>Thread: one asks; the work runs on a thread of its own; any may read the answer, once a frame for instance.
 */
public final class Later<T> {
    private static final Logger LOG = Logger.getLogger(Later.class.getName());
    private static final long IDLE_SECONDS = 5;

    /**
     * @param value   empty when it failed
     * @param problem what went wrong, if anything did
     */
    public record Answer<T>(Optional<T> value, Problem problem) { }

    private final ThreadPoolExecutor work;
    private final Answer<T> nothing = new Answer<>(Optional.empty(), Problem.NONE);
    private volatile long asked;
    private volatile Answer<T> answer = nothing;
    private boolean waiting;

    public Later(String threadName) {
        work = new ThreadPoolExecutor(1, 1, IDLE_SECONDS, TimeUnit.SECONDS, new LinkedBlockingQueue<>(), job -> {
            Thread thread = new Thread(job, threadName);
            thread.setDaemon(true);
            return thread;
        });
        work.allowCoreThreadTimeOut(true);
    }

    /** Answers this from now on; what was asked before and not begun is dropped. */
    public synchronized void ask(Callable<T> question) {
        long ticket = ++asked;
        waiting = true;
        work.execute(() -> {
            if (ticket == asked) {
                take(ticket, answered(question));
            }
        });
    }

    /** Forgets question and answer. */
    public synchronized void drop() {
        asked++;
        waiting = false;
        answer = nothing;
    }

    /** The newest there is; the same object until there is a newer one. */
    public Answer<T> answer() {
        return answer;
    }

    /** Whoever has seen the newest answer finds that nothing is waited for. */
    public synchronized boolean isWaiting() {
        return waiting;
    }

    private synchronized void take(long ticket, Answer<T> next) {
        if (ticket == asked) {
            answer = next;
            waiting = false;
        }
    }

    /** What goes wrong has words of its own: every package's problems carry one line for the player. Nothing leaves the question open. */
    private static <T> Answer<T> answered(Callable<T> question) {
        try {
            return new Answer<>(Optional.of(question.call()), Problem.NONE);
        } catch (JournalProblem | PresetProblem | SoundProblem told) {
            return new Answer<>(Optional.empty(), Problem.of(told));
        } catch (CancellationException brokenOff) {
            return new Answer<>(Optional.empty(), Problem.NONE);
        } catch (Exception | Error problem) {
            LOG.log(Level.WARNING, Thread.currentThread().getName(), problem);
            return new Answer<>(Optional.empty(), Problem.of(problem));
        }
    }
}
