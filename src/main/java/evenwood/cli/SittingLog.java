package evenwood.cli;

import evenwood.journal.Journal;
import evenwood.journal.JournalProblem;
import evenwood.journal.Practice;
import evenwood.measure.TakeReadings;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.UUID;

/**
 * Writes a sitting of live playing into the journal as it goes on, if it is wanted: every minute, so that a pulled plug costs at
 * most one, and at the end.
 */
final class SittingLog implements AutoCloseable {
    private static final long MINUTE_NANOS = 60_000_000_000L;
    /** Less is trying out, not practice (our choice). */
    private static final double LEAST_PLAYING_SECONDS = 10;

    private final Journal journal;
    private final String instrument;
    private final String uid = UUID.randomUUID().toString();
    private final OffsetDateTime start = OffsetDateTime.now().truncatedTo(ChronoUnit.MILLIS);
    private long written = System.nanoTime();

    private SittingLog(Journal journal, String instrument) {
        this.journal = journal;
        this.instrument = instrument;
    }

    /** @throws JournalProblem at once and not after an hour of playing */
    static SittingLog open(boolean wanted, AdviceOptions advice) {
        return new SittingLog(wanted ? advice.journal().open() : null, advice.instrumentId());
    }

    /** Called often; writes once a minute, and waits for nothing. */
    void note(TakeReadings heard) {
        if (journal != null && System.nanoTime() - written >= MINUTE_NANOS && isPractice(heard)) {
            written = System.nanoTime();
            journal.add(Practice.of(uid, start, instrument, heard));
        }
    }

    void finish(TakeReadings heard, Terminal terminal) {
        if (journal == null) {
            return;
        }
        if (!isPractice(heard)) {
            terminal.note("listen --log: under 10 seconds were played, so nothing was written down");
            return;
        }
        try {
            journal.addNow(Practice.of(uid, start, instrument, heard));
        } catch (JournalProblem problem) {
            terminal.note(problem.getMessage());
        }
    }

    private static boolean isPractice(TakeReadings heard) {
        return heard.activity().playingSeconds() >= LEAST_PLAYING_SECONDS;
    }

    @Override
    public void close() {
        if (journal != null) {
            journal.close();
        }
    }
}
