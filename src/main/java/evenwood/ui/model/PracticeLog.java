package evenwood.ui.model;

import evenwood.journal.Journal;
import evenwood.journal.JournalProblem;
import evenwood.journal.Practice;
import evenwood.live.LiveState;
import evenwood.measure.TakeReadings;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Writes down live playing, if the player wants it: when, which instrument, how long, how loud and how bright; no sound.
 * Every minute, so that a pulled plug costs at most one, and when the take ends. The demo is no practice.
 *
 * <p>Thread: one of its own looks once a second, also while the window is out of sight; wanting is said from the screen's.
 */
public final class PracticeLog implements AutoCloseable {
    private static final String WANTED = "practice.log";
    private static final long LOOK_EVERY_MS = 1000;
    private static final double WRITE_EVERY_SECONDS = 60;
    /** Less is trying out, not practice (our choice, as in {@code listen --log}). */
    private static final double LEAST_PLAYING_SECONDS = 10;

    private final Supplier<Now> now;
    private final Supplier<String> instrument;
    private final Choices choices;
    private final Path file;
    private final ScheduledExecutorService work = Executors.newSingleThreadScheduledExecutor(job -> {
        Thread thread = new Thread(job, "evenwood-practice");
        thread.setDaemon(true);
        return thread;
    });
    private volatile boolean wanted;
    private volatile String problem = "";
    // Of its own thread only:
    private Sitting sitting;

    /** @param instrument what is played, an id */
    public PracticeLog(Supplier<Now> now, Supplier<String> instrument, Choices choices, Path file) {
        this.now = now;
        this.instrument = instrument;
        this.choices = choices;
        this.file = file;
        wanted = choices.get(WANTED, "no").equals("yes");
    }

    /** From now on it looks by itself. */
    public void start() {
        work.scheduleWithFixedDelay(this::look, LOOK_EVERY_MS, LOOK_EVERY_MS, TimeUnit.MILLISECONDS);
    }

    public boolean isWanted() {
        return wanted;
    }

    /** What was written stays; nothing more is written when it is not wanted. */
    public void want(boolean now) {
        wanted = now;
        choices.put(WANTED, now ? "yes" : "no");
    }

    /** Why nothing can be written; empty when all is well. */
    public String problem() {
        return problem;
    }

    void look() {
        Now newest = now.get();
        boolean live = newest.choice().filter(SoundChoice.Live.class::isInstance).isPresent();
        Optional<TakeReadings> heard = wanted && live ? newest.readings() : Optional.empty();
        if (sitting != null && heard.filter(sitting::goesOn).isEmpty()) {
            write();
            sitting = null;
        }
        if (heard.isEmpty()) {
            return;
        }
        if (sitting == null) {
            sitting = new Sitting(heard.get(), instrument.get());
        }
        sitting.heard = heard.get();
        boolean over = newest.state().filter(state -> state.phase() == LiveState.Phase.STOPPED).isPresent();
        if (over || sitting.heard.take().durationSeconds() - sitting.writtenSeconds >= WRITE_EVERY_SECONDS) {
            write();
        }
    }

    private void write() {
        if (sitting.heard == sitting.written || sitting.heard.activity().playingSeconds() < LEAST_PLAYING_SECONDS) {
            return;
        }
        try (Journal journal = Journal.open(file)) {
            journal.addNow(Practice.of(sitting.uid, sitting.start, sitting.instrument, sitting.heard));
            problem = "";
        } catch (JournalProblem told) {
            problem = told.getMessage();
        }
        sitting.written = sitting.heard;
        sitting.writtenSeconds = sitting.heard.take().durationSeconds();
    }

    /** Writes what is not written yet, and waits for it: the window closes. */
    @Override
    public void close() {
        work.execute(() -> {
            if (sitting != null) {
                write();
            }
        });
        work.shutdown();
        try {
            work.awaitTermination(5, TimeUnit.SECONDS);
        } catch (InterruptedException interrupted) {
            Thread.currentThread().interrupt();
        }
    }

    /** A take that is going on. */
    private static final class Sitting {
        private final String uid = UUID.randomUUID().toString();
        private final OffsetDateTime start;
        private final String instrument;
        private TakeReadings heard;
        private TakeReadings written;
        private double writtenSeconds;

        Sitting(TakeReadings heard, String instrument) {
            this.heard = heard;
            this.instrument = instrument;
            start = OffsetDateTime.now().minusSeconds(Math.round(heard.take().durationSeconds())).truncatedTo(ChronoUnit.MILLIS);
        }

        /** A new take begins at nothing again. */
        boolean goesOn(TakeReadings next) {
            return next.take().durationSeconds() >= heard.take().durationSeconds();
        }
    }
}
