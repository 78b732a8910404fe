package evenwood.bench;

import evenwood.measure.ActivityMeter;
import evenwood.measure.ActivityReading;
import evenwood.measure.HopGrid;
import evenwood.measure.NoteMeter;
import evenwood.measure.NotesReading;
import evenwood.sound.AudioBlock;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/** With a spectrum of its own, which the whole set of meters shares; the reading is of ten minutes. */
@State(Scope.Thread)
public class NoteBench {
    private static final HopGrid GRID = new HopGrid(48_000);
    private static final int HOPS = GRID.hopsIn(600);

    private final Played played = new Played();
    private final NoteMeter meter = new NoteMeter(GRID, HOPS);
    private ActivityReading activity;

    @Setup
    public void hearTenMinutes() {
        ActivityMeter activityMeter = new ActivityMeter(GRID, HOPS);
        for (int i = 0; i < HOPS * GRID.hopFrames() / AudioBlock.DEFAULT_FRAMES; i++) {
            AudioBlock block = played.nextBlock();
            meter.accept(block);
            activityMeter.accept(block);
        }
        activity = activityMeter.reading();
    }

    @Benchmark
    public NoteMeter accept() {
        meter.accept(played.nextBlock());
        return meter;
    }

    @Benchmark
    public NotesReading reading() {
        return meter.reading(activity);
    }
}
