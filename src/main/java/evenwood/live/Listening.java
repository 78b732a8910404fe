package evenwood.live;

import evenwood.measure.TakeMeters;
import evenwood.measure.TakeReadings;
import evenwood.sound.AudioBlock;
import evenwood.sound.LineOpener;
import evenwood.sound.SoundFormat;
import evenwood.sound.SoundSource;
import java.util.function.Supplier;

/**
 * Listens to an input and keeps measuring: a live take joined with all the meters.
 *
 * <p>Out: {@link #picture()}, the newest readings and how the take stands.
 * <p>How: the meters live on the analysis thread and nowhere else; it publishes one immutable set of readings in a
 * volatile field: the moment and the peaks twenty times a second, everything else once a second,
 * and from three minutes on more seldom, up to every three seconds: the longer a take, the less its readings move and the more
 * they cost (about 10 ms after two minutes, 20 after ten), and listening should stay under 2 % of a core.
 * <p>Thread: any. {@link #stop()} waits until everything captured is measured.
 */
public final class Listening implements AutoCloseable {
    private static final double MOMENT_EVERY_SECONDS = 0.05;
    private static final int MOMENTS_PER_READINGS = 20;
    private static final double SECONDS_UNTIL_SELDOM = 200;
    private static final double MOST_SELDOM = 3;
    /** What the meters look back on; a longer take forgets its beginning where a meter works by hops. */
    private static final double REMEMBERED_SECONDS = 600;

    private final String inputName;
    private final Meters meters;
    private final LiveTake take;

    private Listening(SoundSource source, Supplier<? extends SoundSource> opener, BlockListener beside) {
        inputName = source.name();
        meters = new Meters(source.format(), inputName, beside);
        take = LiveTake.start(source, opener, meters);
    }

    /** Opens the input and starts. @throws evenwood.sound.SoundProblem if it cannot be opened */
    public static Listening start(LineOpener opener) {
        return new Listening(opener.get(), opener, block -> { });
    }

    /** Starts on any source that runs in real time; the opener opens it again when it fails. */
    public static Listening start(SoundSource source, Supplier<? extends SoundSource> opener) {
        return new Listening(source, opener, block -> { });
    }

    /** The same with somebody beside the meters who hears every block they hear, on the analysis thread. */
    public static Listening start(SoundSource source, Supplier<? extends SoundSource> opener, BlockListener beside) {
        return new Listening(source, opener, beside);
    }

    public String inputName() {
        return inputName;
    }

    public LivePicture picture() {
        return new LivePicture(take.state(), meters.newest, meters.number);
    }

    /** Ends the take; the picture returned holds the final readings of everything that was captured. */
    public LivePicture stop() {
        take.stop();
        LiveState state = take.state();
        return new LivePicture(state, meters.finished(), meters.number + 1);
    }

    @Override
    public void close() {
        take.close();
    }

    /** Owned by the analysis thread until the take is stopped. */
    private static final class Meters implements BlockListener {
        private final TakeMeters meters;
        private final String name;
        private final long framesBetween;
        private long framesSince;
        private int momentsSince;
        private volatile TakeReadings newest;
        private volatile long number;
        private final BlockListener beside;

        Meters(SoundFormat format, String name, BlockListener beside) {
            this.name = name;
            this.beside = beside;
            meters = new TakeMeters(format, REMEMBERED_SECONDS);
            framesBetween = Math.round(MOMENT_EVERY_SECONDS * format.sampleRateHz());
            newest = meters.readings(name);
        }

        @Override
        public void accept(AudioBlock block) {
            meters.accept(block);
            beside.accept(block);
            framesSince += block.frames();
            if (framesSince >= framesBetween) {
                framesSince = 0;
                publish();
            }
        }

        @Override
        public void gap(long lostFrames) {
            meters.gap();
            beside.gap(lostFrames);
        }

        private void publish() {
            momentsSince++;
            double lengths = newest.take().durationSeconds() / SECONDS_UNTIL_SELDOM;
            boolean all = momentsSince >= MOMENTS_PER_READINGS * Math.max(1, Math.min(MOST_SELDOM, lengths));
            newest = all ? meters.readings(name) : meters.renewed(newest);
            number = number + 1;
            momentsSince = all ? 0 : momentsSince;
        }

        TakeReadings finished() {
            return meters.readingsOfFinishedTake(name);
        }
    }
}
